import { TextLink } from "@/components/ui/button";
import { capital } from "@/lib/charts/number-text";
import { momentText } from "@/lib/domain/date-text";
import type { TrailChange } from "@/lib/domain/trail";
import { TrailChanges } from "./trail-changes";

type Line = {
  readonly seq: string;
  readonly at: string;
  readonly who: string;
  readonly what: string;
  readonly subject: string | null;
  readonly job: { readonly id: string; readonly number: number } | null;
  readonly changes: readonly TrailChange[];
  readonly reason: string | null;
};
type Props = { readonly lines: readonly Line[]; readonly timeZone: string };

/** The trail, one entry below the other: who did what, when, and from what to what. */
export function ActivityTrail({ lines, timeZone }: Props) {
  return (
    <ol aria-label="Activity, newest first" className="border border-rule bg-sheet">
      {lines.map((line) => (
        <li
          key={line.seq}
          className="grid gap-x-6 gap-y-1 border-b border-rule px-4 py-3 last:border-b-0 md:grid-cols-[13rem_minmax(0,1fr)]"
        >
          <div className="text-sm">
            <p className="font-semibold">{line.who}</p>
            <time dateTime={line.at} className="text-muted">
              {momentText(line.at, timeZone)}
            </time>
          </div>
          <div className="min-w-0">
            <p>
              {capital(line.what)}
              {line.subject === null ? null : `: ${line.subject}`}
              {line.job === null ? null : (
                <>
                  , <TextLink href={`/jobs/${line.job.id}`}>job {line.job.number}</TextLink>
                </>
              )}
            </p>
            <TrailChanges changes={line.changes} />
            {line.reason === null ? null : <p className="mt-1 text-sm">Reason: {line.reason}</p>}
          </div>
        </li>
      ))}
    </ol>
  );
}
