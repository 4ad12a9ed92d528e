import type { Draft } from "./draft";
import type { Who } from "./outbox";
import type { FieldStore } from "./store";

type Drafts = Readonly<Record<string, Draft>>;
type Change = { readonly jobId: string; readonly change: (draft: Draft) => Draft };

type Parts = {
  readonly store: FieldStore;
  readonly owner: () => Who | null;
  readonly blank: (jobId: string) => Draft;
  /** Draws the drafts as they will be once everything is kept. */
  readonly show: (drafts: Drafts) => void;
  readonly failed: (error: unknown) => void;
  readonly kept: () => void;
};

const AGAIN_MS = 5_000;

/**
 * Takes changes at once and keeps them one after the other. A change that cannot be kept stays in memory, in its
 * place, and is tried again: what was typed is never dropped because a disk is full.
 */
export function createDraftWriter({ store, owner, blank, show, failed, kept }: Parts) {
  let stored: Drafts = {};
  let waiting: readonly Change[] = [];
  let working: Promise<void> = Promise.resolve();
  let again: ReturnType<typeof setTimeout> | null = null;
  let keptCount = 0;

  const asShown = (): Drafts => {
    const all: Record<string, Draft> = { ...stored };
    for (const { jobId, change } of waiting) all[jobId] = change(all[jobId] ?? blank(jobId));
    return all;
  };
  const work = async () => {
    for (let next = waiting[0]; next !== undefined; next = waiting[0]) {
      const who = owner();
      if (who === null) return;
      const { jobId, change } = next;
      try {
        const draft = await store.changeDraft(who, jobId, (old) => change(old ?? blank(jobId)));
        stored = { ...stored, [jobId]: draft };
        keptCount += 1;
      } catch (error) {
        failed(error);
        if (again !== null) clearTimeout(again);
        again = setTimeout(() => void settle(), AGAIN_MS);
        return;
      }
      waiting = waiting.slice(1);
      show(asShown());
      kept();
    }
  };
  /** Resolves when everything that can be kept is. */
  const settle = (): Promise<void> => {
    working = working.then(work, work);
    return working;
  };
  return {
    settle,
    change: (jobId: string, change: (draft: Draft) => Draft): Promise<void> => {
      waiting = [...waiting, { jobId, change }];
      show(asShown());
      return settle();
    },
    /** Takes what the store holds now; changes that wait stay on top of it. */
    read: (drafts: Drafts): Drafts => {
      stored = drafts;
      return asShown();
    },
    /** Rises with every change kept: what was read before it rose is old. */
    keptCount: () => keptCount,
    /** True while something is in memory only. */
    isBehind: () => waiting.length > 0,
    forget: () => {
      waiting = [];
      stored = {};
    },
  };
}
