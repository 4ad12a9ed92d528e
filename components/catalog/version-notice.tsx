import { Notice } from "@/components/ui/notice";
import { CatalogPress } from "./catalog-press";
import type { Kept } from "./kept";

type Props = {
  readonly jobId: string;
  /** `null` when this record cannot be changed now: signed, or not this person's. */
  readonly expectedVersion: number | null;
  readonly version: {
    readonly name: string;
    readonly version: number;
    readonly retired: boolean;
    readonly newer: {
      readonly id: string;
      readonly version: number;
      readonly changes: readonly string[];
    } | null;
  };
  readonly move: (input: unknown) => Promise<Kept<unknown>>;
};

/** Which version of the model or thermostat the job rests on, and what moving to the newer one would change. */
export function VersionNotice({ jobId, expectedVersion, version, move }: Props) {
  const { name, newer } = version;
  const rests = `This job rests on version ${version.version} of ${name}`;
  if (newer === null) {
    return (
      <p className="text-sm text-muted">
        {rests}
        {version.retired ? ", which is retired from the catalog; the job keeps it." : ", the newest."}
      </p>
    );
  }
  return (
    <Notice
      kind="information"
      title={`${rests}; the catalog has version ${newer.version}`}
      action={
        expectedVersion === null ? undefined : (
          <CatalogPress input={{ jobId, expectedVersion, versionId: newer.id }} send={move}>
            {`Move this job to version ${newer.version}`}
          </CatalogPress>
        )
      }
    >
      <p>The newer version differs in:</p>
      <ul className="list-disc pl-5">
        {newer.changes.map((change) => (
          <li key={change}>{change}</li>
        ))}
      </ul>
      {expectedVersion === null ? <p>Reopen the record to move it.</p> : null}
    </Notice>
  );
}
