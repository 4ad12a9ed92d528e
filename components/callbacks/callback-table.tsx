import { TextLink } from "@/components/ui/button";
import { EmptyState } from "@/components/ui/empty-state";
import { type Column, Table } from "@/components/ui/table";
import { CALLBACK_CAUSES, CALLBACK_KINDS, CALLBACK_STATES, type Callback } from "@/lib/domain/callbacks";

/** Callbacks with what is due next; `today` decides what is overdue. */
export function CallbackTable({
  callbacks,
  today,
}: {
  readonly callbacks: readonly Callback[];
  readonly today: string;
}) {
  const columns: readonly Column<Callback>[] = [
    {
      key: "job",
      head: "Job",
      rowHead: true,
      cell: ({ job }) => (
        <TextLink href={`/jobs/${job.id}/callbacks`}>
          {job.number} {job.customerName}
        </TextLink>
      ),
    },
    { key: "kind", head: "Complaint", cell: (one) => CALLBACK_KINDS[one.kind].label },
    {
      key: "state",
      head: "State",
      cell: (one) => (one.reopenedByLog === "" ? CALLBACK_STATES[one.state] : "Opened again by the log"),
    },
    {
      key: "due",
      head: "Due",
      cell: ({ dueOn }) =>
        dueOn === null ? (
          ""
        ) : dueOn < today ? (
          <strong className="text-short">
            <span className="whitespace-nowrap">{dueOn}</span>, overdue
          </strong>
        ) : (
          <span className="whitespace-nowrap">{dueOn}</span>
        ),
    },
    { key: "on", head: "Reported", wideOnly: true, cell: (one) => one.reportedOn },
    {
      key: "cause",
      head: "Cause",
      wideOnly: true,
      cell: ({ causeKind, cause }) =>
        causeKind === null ? cause || "not found yet" : CALLBACK_CAUSES[causeKind],
    },
  ];
  return (
    <Table
      label="Callbacks"
      columns={columns}
      rows={callbacks}
      rowKey={(one) => one.id}
      empty={
        <EmptyState title="No callback">Nobody has complained of this, or nobody wrote it down.</EmptyState>
      }
    />
  );
}
