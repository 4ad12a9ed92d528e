import { TrailChanges } from "@/components/company/trail-changes";
import { EmptyState } from "@/components/ui/empty-state";
import { momentText } from "@/lib/domain/date-text";
import type { TrailChange } from "@/lib/domain/trail";

export type Revision = {
  readonly revision: number;
  readonly at: string;
  readonly who: string;
  readonly reason: string;
  readonly changes: readonly TrailChange[];
};
type Props = { readonly history: readonly Revision[]; readonly timeZone: string };

/** Who changed which limit, when and why. */
export function LimitHistory({ history, timeZone }: Props) {
  if (history.length === 0) {
    return (
      <EmptyState title="No limit has been changed">
        Every limit has its seed value. A change will stand here with its reason.
      </EmptyState>
    );
  }
  return (
    <ol className="border border-rule bg-sheet">
      {history.map(({ revision, at, who, reason, changes }) => (
        <li key={revision} className="border-b border-rule px-4 py-3 last:border-b-0">
          <p className="text-sm">
            <span className="font-semibold">{who}</span>,{" "}
            <time dateTime={at} className="text-muted">
              {momentText(at, timeZone)}
            </time>
          </p>
          <TrailChanges changes={changes} />
          <p className="mt-1 text-sm">Reason: {reason}</p>
        </li>
      ))}
    </ol>
  );
}
