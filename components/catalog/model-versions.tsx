import { TextLink } from "@/components/ui/button";
import { Table } from "@/components/ui/table";

type Version = {
  readonly id: string;
  readonly version: number;
  readonly madeAt: string;
  readonly madeBy: string;
  readonly retired: boolean;
  readonly jobs: readonly { readonly id: string; readonly number: number }[];
};

/** Every version with the jobs that rest on it. */
export function ModelVersions({
  versions,
  shown,
  at = { catalog: "/catalog", record: "equipment-selection" },
}: {
  readonly versions: readonly Version[];
  readonly shown: string;
  /** Where the versions and the record that rests on them are. */
  readonly at?: { readonly catalog: string; readonly record: string };
}) {
  return (
    <section aria-labelledby="versions">
      <h2 id="versions" className="mb-2 text-lg font-semibold">
        Versions
      </h2>
      <Table
        label="Versions"
        rows={versions}
        rowKey={({ id }) => id}
        columns={[
          {
            key: "version",
            head: "Version",
            rowHead: true,
            cell: (one) =>
              one.id === shown ? (
                `${one.version}, shown here`
              ) : (
                <TextLink href={`${at.catalog}/${one.id}`}>version {one.version}</TextLink>
              ),
          },
          { key: "made", head: "Made", cell: (one) => `${one.madeAt.slice(0, 10)} by ${one.madeBy}` },
          { key: "state", head: "State", cell: (one) => (one.retired ? "off the lists" : "on the lists") },
          {
            key: "jobs",
            head: "Jobs that rest on it",
            cell: (one) =>
              one.jobs.length === 0
                ? "none"
                : one.jobs.map((job, index) => (
                    <span key={job.id}>
                      {index > 0 ? ", " : ""}
                      <TextLink href={`/jobs/${job.id}/${at.record}`}>{job.number}</TextLink>
                    </span>
                  )),
          },
        ]}
      />
    </section>
  );
}
