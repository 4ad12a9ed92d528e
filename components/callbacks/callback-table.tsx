import { TextLink } from "@/components/ui/button";
import { EmptyState } from "@/components/ui/empty-state";
import { type Column, Table } from "@/components/ui/table";
import { CALLBACK_KINDS, CALLBACK_STATES, type Callback } from "@/lib/domain/callbacks";

const COLUMNS: readonly Column<Callback>[] = [
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
  { key: "state", head: "State", cell: (one) => CALLBACK_STATES[one.state] },
  { key: "on", head: "Reported", wideOnly: true, cell: (one) => one.reportedOn },
  { key: "cause", head: "Cause", wideOnly: true, cell: (one) => one.cause || "not found yet" },
];

export function CallbackTable({ callbacks }: { readonly callbacks: readonly Callback[] }) {
  return (
    <Table
      label="Callbacks"
      columns={COLUMNS}
      rows={callbacks}
      rowKey={(one) => one.id}
      empty={<EmptyState title="No callback">Nobody has complained, or nobody wrote it down.</EmptyState>}
    />
  );
}
