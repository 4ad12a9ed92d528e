import { TextLink } from "@/components/ui/button";
import { type Column, Table } from "@/components/ui/table";

type Row = {
  readonly jobId: string;
  readonly number: number;
  readonly customerName: string;
  readonly humidityComplaints: number;
};

const COLUMNS: readonly Column<Row>[] = [
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
    cell: (row) =>
      row.humidityComplaints === 0 ? (
        "0"
      ) : (
        <TextLink href={`/jobs/${row.jobId}/callbacks`}>{row.humidityComplaints}</TextLink>
      ),
  },
];

/** The jobs behind one line of the comparison. */
export function ChosenJobs(props: {
  readonly label: string;
  readonly name: string;
  readonly jobs: readonly Row[];
}) {
  const { label, name, jobs } = props;
  return (
    <section aria-labelledby="chosen-jobs" className="grid gap-3">
      <h2 id="chosen-jobs" className="text-lg font-semibold">
        {label}: {name}
      </h2>
      <Table
        label={`Jobs with ${label.toLowerCase()} ${name}`}
        columns={COLUMNS}
        rows={jobs}
        rowKey={(row) => row.jobId}
        empty={<p className="text-muted">No job has this.</p>}
      />
    </section>
  );
}
