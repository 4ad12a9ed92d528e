import { VerdictMark } from "@/components/findings/verdict-mark";
import { TextLink } from "@/components/ui/button";
import type { Choice } from "@/components/ui/choice-fields";
import { type Column, Table } from "@/components/ui/table";
import { JOB_COLUMNS, type JobColumn } from "@/lib/domain/job-table";
import type { JobSummary } from "@/lib/domain/jobs";
import { STAGE_NAMES } from "@/lib/domain/stages";
import type { JobListQuery } from "@/lib/schemas/job";
import { PlanCell, type Schedule } from "./plan-cell";
import { type Search, tableAddress } from "./table-address";

type Plan = { readonly techs: readonly Choice[]; readonly schedule: Schedule };
type Props = {
  readonly jobs: readonly JobSummary[];
  readonly query: JobListQuery;
  readonly asked: Search;
  /** Left out for people who may not assign. */
  readonly plan: Plan | null;
  readonly empty: React.ReactNode;
};

export function JobsTable({ jobs, query, asked, plan, empty }: Props) {
  const columns = query.columns.map((key) => ({
    ...cellsOf(key, plan),
    key,
    head: JOB_COLUMNS[key].label,
    sort: sortOf(key, query, asked),
  }));
  return <Table label="Jobs" stacked columns={columns} rows={jobs} rowKey={(job) => job.id} empty={empty} />;
}

/** Pressing a head sorts by it; pressing it again turns the order round. */
function sortOf(key: JobColumn, query: JobListQuery, asked: Search): Column<JobSummary>["sort"] {
  const first = JOB_COLUMNS[key].descendingFirst ? "down" : "up";
  const now = query.sort === key ? (query.way ?? first) : null;
  const next = now === null ? first : now === "up" ? "down" : "up";
  return {
    href: tableAddress(asked, { sort: key, way: next }),
    direction: now === null ? null : now === "up" ? "ascending" : "descending",
  };
}

type Cells = Pick<Column<JobSummary>, "cell" | "rowHead" | "wideOnly" | "onPhone">;

function cellsOf(key: JobColumn, plan: Plan | null): Cells {
  if (key === "tech" && plan !== null)
    return { ...CELLS.tech, cell: (job) => <PlanCell job={job} {...plan} /> };
  return CELLS[key];
}

const CELLS: Readonly<Record<JobColumn, Cells>> = {
  number: {
    rowHead: true,
    onPhone: "left",
    cell: (job) => (
      <TextLink href={`/jobs/${job.id}`} data-job="">
        {job.number}
      </TextLink>
    ),
  },
  customer: {
    onPhone: "top",
    cell: (job) => (
      <>
        <TextLink href={`/jobs/${job.id}`}>{job.customerName}</TextLink>
        <span className="block text-xs text-muted">{job.place}</span>
      </>
    ),
  },
  // On a phone the verdict takes its place.
  stage: { wideOnly: true, cell: (job) => (job.currentStage ? STAGE_NAMES[job.currentStage] : "all signed") },
  verdict: {
    onPhone: "top right",
    cell: (job) =>
      job.verdict === null ? (
        <span className="text-muted">nothing judged yet</span>
      ) : (
        <VerdictMark verdict={job.verdict} look="plain" />
      ),
  },
  attention: {
    cell: (job) =>
      job.attention.length < 2 ? (
        (job.attention[0] ?? "")
      ) : (
        <details>
          <summary className="cursor-pointer">
            {job.attention[0]}
            <span className="block text-xs text-muted">and {job.attention.length - 1} more</span>
          </summary>
          <ul className="mt-1 list-disc pl-5">
            {job.attention.slice(1).map((reason) => (
              <li key={reason}>{reason}</li>
            ))}
          </ul>
        </details>
      ),
  },
  tech: { onPhone: "middle", cell: (job) => job.techs.map((tech) => tech.name).join(", ") || "nobody yet" },
  startup: {
    onPhone: "right",
    cell: (job) => <span className="whitespace-nowrap">{job.startupDue ?? "no date"}</span>,
  },
  review: {
    cell: (job) => (
      <span className="whitespace-nowrap">
        <span className="sm:hidden">Review: </span>
        {job.reviewDue ?? "no date"}
      </span>
    ),
  },
};
