import { TextLink } from "@/components/ui/button";
import { Pagination } from "@/components/ui/pagination";
import { type Column, Table } from "@/components/ui/table";
import { COMPARED, type ComparedBy, type JobOfGroup, MEASURES } from "@/lib/domain/across-jobs";
import { type AcrossJobsQuery, acrossJobsAddress } from "@/lib/schemas/across-jobs";

/** The jobs behind one line of the comparison, a page at a time. */
export function ChosenJobs(props: {
  readonly query: AcrossJobsQuery;
  readonly by: ComparedBy;
  readonly name: string;
  readonly value: string;
  readonly jobs: readonly JobOfGroup[];
  /** Jobs in the group. */
  readonly of: number;
  readonly aPage: number;
}) {
  const { query, by, name, value, jobs, of, aPage } = props;
  const { label } = COMPARED[by];
  const first = (query.page - 1) * aPage;
  const pageHref = (page: number) =>
    `/across-jobs?${acrossJobsAddress({ ...query, by, value, page })}#chosen-jobs`;
  return (
    <section aria-labelledby="chosen-jobs" className="grid gap-3">
      <h2 id="chosen-jobs" className="text-lg font-semibold">
        {label}: {name}
      </h2>
      <Table
        label={`Jobs with ${label.toLowerCase()} ${name}`}
        columns={columnsFor(query)}
        rows={jobs}
        rowKey={(row) => row.jobId}
        empty={<p className="text-muted">No job has this.</p>}
      />
      {of > aPage ? (
        <Pagination
          summary={`${(first + 1).toLocaleString("en-US")} to ${(first + jobs.length).toLocaleString("en-US")} of ${of.toLocaleString("en-US")} jobs`}
          previousHref={query.page > 1 ? pageHref(query.page - 1) : null}
          nextHref={first + jobs.length < of ? pageHref(query.page + 1) : null}
        />
      ) : null}
    </section>
  );
}

function columnsFor({ measure }: AcrossJobsQuery): readonly Column<JobOfGroup>[] {
  const callbacks = (row: JobOfGroup, count: number) =>
    count === 0 ? "0" : <TextLink href={`/jobs/${row.jobId}/callbacks`}>{count}</TextLink>;
  return [
    {
      key: "job",
      head: "Job",
      rowHead: true,
      cell: (row) => (
        <TextLink href={`/jobs/${row.jobId}`}>
          {row.number} {row.customerName}
        </TextLink>
      ),
    },
    {
      key: "complaints",
      head: "Humidity complaints",
      numeric: true,
      cell: (row) => callbacks(row, row.humidityComplaints),
    },
    {
      key: "callbacks",
      head: "Callbacks",
      numeric: true,
      wideOnly: true,
      cell: (row) => row.callbacks.toLocaleString("en-US"),
    },
    { key: "verdict", head: "Verdict", wideOnly: true, cell: (row) => row.verdict ?? "not measured" },
    ...(measure === null
      ? []
      : [
          {
            key: "measure",
            head: `${MEASURES[measure].label}${MEASURES[measure].unit === "" ? "" : `, ${MEASURES[measure].unit}`}`,
            numeric: true,
            cell: (row: JobOfGroup) => row.measure?.toFixed(MEASURES[measure].decimals) ?? "not known",
          },
        ]),
  ];
}
