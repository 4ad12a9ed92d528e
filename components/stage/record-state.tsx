import { VerdictMark } from "@/components/findings/verdict-mark";
import { Badge } from "@/components/ui/badge";
import { dayOf } from "@/lib/domain/days";
import type { StageRecord } from "@/lib/domain/jobs";
import type { Verdict } from "@/lib/engineering/findings";

type Props = {
  readonly record: StageRecord | null;
  readonly revisions: readonly StageRecord[];
  readonly verdictNow: Verdict | null;
  readonly timeZone: string;
};

/** Whether the record is a draft or signed, by whom, and what came before. */
export function RecordState({ record, revisions, verdictNow, timeZone }: Props) {
  if (!record) return <p className="text-muted">Nothing entered yet.</p>;
  const signedOn = ({ signedAt }: StageRecord) => (signedAt === null ? "" : dayOf(signedAt, timeZone));
  const earlier = revisions.filter((one) => one.id !== record.id);
  return (
    <div className="flex flex-wrap items-center gap-x-4 gap-y-2 text-sm">
      <Badge tone={record.state === "signed" ? "accent" : "plain"}>
        {record.state === "signed" ? "Signed" : "Draft"}
      </Badge>
      <span>
        {record.state === "signed"
          ? `Revision ${record.revision}, signed by ${record.signatureName} on ${signedOn(record)}`
          : `Revision ${record.revision}, last saved by ${record.updatedByName}`}
      </span>
      <VerdictMark verdict={verdictNow} look="plain" />
      {record.state === "signed" && record.verdict !== verdictNow ? (
        <span className="text-muted">When signed: {record.verdict ?? "no verdict"}</span>
      ) : null}
      {record.reopenReason ? <span className="text-muted">Reopened: {record.reopenReason}</span> : null}
      {earlier.length > 0 ? (
        <details>
          <summary className="cursor-pointer">Earlier revisions ({earlier.length})</summary>
          <ul className="mt-1 grid gap-1">
            {earlier.map((one) => (
              <li key={one.id}>
                Revision {one.revision}, signed by {one.signatureName} on {signedOn(one)}:{" "}
                {one.verdict ?? "no verdict"}
              </li>
            ))}
          </ul>
        </details>
      ) : null}
    </div>
  );
}
