import { TextLink } from "@/components/ui/button";
import { EmptyState } from "@/components/ui/empty-state";
import { type Column, Table } from "@/components/ui/table";
import {
  COMPARED,
  type ComparedBy,
  type ComparedGroup,
  LEAST_JOBS_OF_A_PERSON,
  OUTCOMES_COUNTED,
} from "@/lib/domain/across-jobs";
import { type AcrossJobsQuery, acrossJobsAddress } from "@/lib/schemas/across-jobs";

const percent = (share: number) => (100 * share).toFixed(0);

/** Counts and shares by group, each share with the range chance alone would allow. */
export function ComparisonTable({
  query,
  by,
  groups,
}: {
  readonly query: AcrossJobsQuery;
  readonly by: ComparedBy;
  readonly groups: readonly ComparedGroup[];
}) {
  const outcome = OUTCOMES_COUNTED[query.outcome].label;
  const columns: readonly Column<ComparedGroup>[] = [
    {
      key: "name",
      head: COMPARED[by].label,
      rowHead: true,
      cell: ({ value, name }) => (
        <TextLink
          href={`/across-jobs?${acrossJobsAddress({ ...query, by, value: value ?? "", page: 1 })}#chosen-jobs`}
        >
          {name}
        </TextLink>
      ),
    },
    { key: "jobs", head: "Jobs", numeric: true, cell: ({ jobs }) => jobs.toLocaleString("en-US") },
    {
      key: "complaints",
      head: outcome,
      numeric: true,
      cell: ({ complaints }) => complaints.toLocaleString("en-US"),
    },
    {
      key: "share",
      head: "Share, 95 % interval",
      numeric: true,
      cell: ({ share }) =>
        share === null
          ? "too few jobs"
          : `${percent(share.share)} % (${percent(share.low)} to ${percent(share.high)})`,
    },
  ];
  return (
    <>
      <Table
        label={`${outcome} by ${COMPARED[by].label.toLowerCase()}`}
        columns={columns}
        rows={groups}
        rowKey={({ value }) => value ?? ""}
        empty={<EmptyState title="Nothing to compare">No startup record has been signed yet.</EmptyState>}
      />
      <p className="max-w-prose text-sm text-muted">
        The interval is Wilson’s. Where intervals overlap widely, the difference may be chance. What goes
        together is not yet a cause: open the jobs.
        {COMPARED[by].kind === "people"
          ? ` People are listed by name; a share is shown from ${LEAST_JOBS_OF_A_PERSON} jobs on.`
          : ""}
      </p>
    </>
  );
}
