import { TextLink } from "@/components/ui/button";
import { Quantity } from "@/components/ui/quantity";
import { capital } from "@/lib/charts/number-text";
import { momentText } from "@/lib/domain/date-text";
import type { TrailChange, TrailValue } from "@/lib/domain/trail";

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
            <Changes changes={line.changes} />
            {line.reason === null ? null : <p className="mt-1 text-sm">Reason: {line.reason}</p>}
          </div>
        </li>
      ))}
    </ol>
  );
}

function Changes({ changes }: { readonly changes: readonly TrailChange[] }) {
  if (changes.length === 0) return null;
  return (
    <dl className="mt-1 grid gap-x-4 gap-y-0.5 text-sm sm:grid-cols-[minmax(10rem,auto)_minmax(0,1fr)]">
      {changes.map(({ key, label, before, after }) => (
        <div key={key} className="contents">
          <dt className="text-muted">{label}</dt>
          <dd className="min-w-0 break-words max-sm:mb-1">
            {before === null ? null : (
              <>
                <Value value={before} /> <span aria-hidden="true">→</span>
                <span className="sr-only">changed to</span>{" "}
              </>
            )}
            <Value value={after} />
          </dd>
        </div>
      ))}
    </dl>
  );
}

function Value({ value }: { readonly value: TrailValue }) {
  if (value.kind === "quantity") return <Quantity {...value} />;
  if (value.kind === "text") return <span>{value.text}</span>;
  return <span className="text-muted">nothing</span>;
}
