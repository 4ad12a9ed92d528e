import { VerdictMark } from "@/components/findings/verdict-mark";
import { TextLink } from "@/components/ui/button";
import { type Column, Table } from "@/components/ui/table";
import type { JobSummary } from "@/lib/domain/jobs";
import { STAGE_NAMES } from "@/lib/domain/stages";

const COLUMNS: readonly Column<JobSummary>[] = [
  {
    key: "number",
    head: "Job",
    rowHead: true,
    cell: (job) => <TextLink href={`/jobs/${job.id}`}>{job.number}</TextLink>,
  },
  {
    key: "customer",
    head: "Customer",
    cell: (job) => (
      <>
        <TextLink href={`/jobs/${job.id}`}>{job.customerName}</TextLink>
        <span className="block text-xs text-muted">{job.place}</span>
      </>
    ),
  },
  {
    key: "stage",
    head: "Waits for",
    cell: (job) => (job.currentStage ? STAGE_NAMES[job.currentStage] : "all signed"),
  },
  {
    key: "verdict",
    head: "Verdict",
    cell: (job) =>
      job.verdict === null ? (
        <span className="text-muted">nothing judged yet</span>
      ) : (
        <VerdictMark verdict={job.verdict} look="plain" />
      ),
  },
  {
    key: "attention",
    head: "Needs attention",
    wideOnly: true,
    cell: (job) => (
      <>
        {job.attention[0] ?? ""}
        {job.attention.length > 1 ? (
          <span className="block text-xs text-muted">and {job.attention.length - 1} more</span>
        ) : null}
      </>
    ),
  },
  {
    key: "tech",
    head: "Tech",
    wideOnly: true,
    cell: (job) => job.techs.map((tech) => tech.name).join(", ") || "nobody yet",
  },
  {
    key: "due",
    head: "Startup",
    wideOnly: true,
    cell: (job) => <span className="whitespace-nowrap">{job.startupDue ?? "no date"}</span>,
  },
];

type Props = { readonly jobs: readonly JobSummary[]; readonly empty: React.ReactNode };

export function JobsTable({ jobs, empty }: Props) {
  return <Table label="Jobs" columns={COLUMNS} rows={jobs} rowKey={(job) => job.id} empty={empty} />;
}
