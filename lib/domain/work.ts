import type { Id } from "./ids";

/** The kinds of background work. `lib/work/tasks.ts` says what each does. */
export const WORK_TASKS = [
  "judge jobs again",
  "export everything",
  "mail about a complaint",
  "mail what is overdue",
  "mail the month",
  "keep forecast",
  "send packet",
  "hold forecast against log",
  "import log",
  "deliver webhook",
  "mail about a webhook",
] as const;
export type WorkTask = (typeof WORK_TASKS)[number];

/** Work that waits for others outside is done one after the other in a company, so that it holds one place of the worker. */
export const ONE_BY_ONE: ReadonlySet<string> = new Set<WorkTask>(["deliver webhook"]);

/** Tries before work counts as failed. The pauses between them grow: about half an hour in all. */
export const WORK_TRIES = 8;

export const WORK_STATES = ["running", "waiting", "failed", "done", "cancelled"] as const;
export type WorkState = (typeof WORK_STATES)[number];

/** Thrown in work that a person has stopped meanwhile: what it has not kept yet it must not keep. */
export class WorkCancelledError extends Error {
  override readonly name = "WorkCancelledError";
}

export type WorkItemId = Id<"work item">;

/** One piece of background work as people see it. Instants are ISO texts. */
export type WorkItem = {
  readonly id: WorkItemId;
  readonly task: string;
  readonly title: string;
  readonly state: WorkState;
  readonly done: number;
  readonly total: number | null;
  readonly attempt: number;
  readonly problem: string;
  readonly result: string;
  readonly nextTryAt: string | null;
  readonly startedAt: string | null;
  readonly finishedAt: string | null;
  readonly createdAt: string;
  readonly createdByName: string;
};
