import { Badge } from "@/components/ui/badge";
import { momentText } from "@/lib/domain/date-text";
import type { WorkItem, WorkState } from "@/lib/domain/work";
import { TryAgain, type TryAgainAction } from "./try-again";

const STATE_WORDS: Readonly<Record<WorkState, string>> = {
  running: "running",
  waiting: "waiting",
  failed: "failed",
  done: "done",
  cancelled: "stopped",
};
const TONES = {
  running: "accent",
  waiting: "plain",
  failed: "caution",
  done: "muted",
  cancelled: "muted",
} as const;

type Props = {
  readonly items: readonly WorkItem[];
  readonly timeZone: string;
  readonly tryAgain: TryAgainAction;
};

/** Each piece of work: what it is, how it goes, and what can be done when it does not. */
export function WorkList({ items, timeZone, tryAgain }: Props) {
  return (
    <ol aria-label="Background work, newest first" className="border border-rule bg-sheet">
      {items.map((item) => (
        <li
          key={item.id}
          className="grid gap-x-6 gap-y-1 border-b border-rule px-4 py-3 last:border-b-0 md:grid-cols-[13rem_minmax(0,1fr)_auto]"
        >
          <div className="text-sm">
            <Badge tone={TONES[item.state]}>{STATE_WORDS[item.state]}</Badge>
            <p className="mt-1">asked for by {item.createdByName}</p>
            <time dateTime={item.createdAt} className="text-muted">
              {momentText(item.createdAt, timeZone)}
            </time>
          </div>
          <div className="min-w-0">
            <p>{item.title}</p>
            <Progress item={item} />
            <p className="text-sm text-muted">{going(item, timeZone)}</p>
          </div>
          {item.state === "failed" ? (
            <TryAgain workId={item.id} title={item.title} tryAgain={tryAgain} />
          ) : null}
        </li>
      ))}
    </ol>
  );
}

function Progress({ item }: { readonly item: WorkItem }) {
  if (item.state === "done" || item.state === "cancelled" || item.total === null || item.total === 0)
    return null;
  const words = `${item.done} of ${item.total}`;
  return (
    <p className="flex items-center gap-2 text-sm">
      <progress
        aria-label={`${item.title}: done`}
        value={item.done}
        max={item.total}
        className="h-2 w-40 accent-accent"
      />
      {words}
    </p>
  );
}

/** How it goes, in words. */
function going(item: WorkItem, timeZone: string): string {
  const at = (moment: string | null) => (moment === null ? "" : ` ${momentText(moment, timeZone)}`);
  if (item.state === "done") return `${item.result} Finished${at(item.finishedAt)}.`;
  if (item.state === "cancelled") return `Stopped by hand${at(item.finishedAt)}; nothing of it was kept.`;
  if (item.state === "failed") return `${item.problem} Given up${at(item.finishedAt)}.`;
  if (item.state === "running")
    return `Running since${at(item.startedAt)}${item.attempt > 1 ? `, try ${item.attempt}` : ""}.`;
  if (item.problem === "") return "Begins as soon as the server is free.";
  return `Try ${item.attempt} failed: ${item.problem} Tried again${at(item.nextTryAt)}.`;
}
