import { asId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import {
  ONE_BY_ONE,
  WORK_TRIES,
  WorkCancelledError,
  type WorkItem,
  type WorkItemId,
  type WorkState,
  type WorkTask,
} from "@/lib/domain/work";
import { AppError, notFound } from "@/lib/errors";
import { asJson } from "./json";
import { type TenantTransaction, withTenant } from "./with-tenant";
import { FIELDS, toItem } from "./work-item-row";

export type NewWork = {
  readonly task: WorkTask;
  /** What it is, in words for the page of background work. */
  readonly title: string;
  readonly input?: Readonly<Record<string, unknown>>;
  /** While work of this key waits, it is not added again. */
  readonly key?: string;
};

type FoundWork = { readonly item: WorkItem; readonly input: unknown; readonly progress: unknown };
type Begun = { readonly input: unknown; readonly progress: unknown; readonly attempt: number };

/** Work of a company in the background: added with the change that needs it, kept with how it goes. */
export function workItems(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  /** Answers how many were running: none when it was stopped or has ended. */
  const markDone = async (tx: TenantTransaction, id: string, result: string): Promise<number> => {
    const done = await tx.workItem.updateMany({
      where: { ...own, id, state: "running" },
      data: { state: "done", result, problem: "", finishedAt: new Date() },
    });
    return done.count;
  };
  return {
    add: (work: NewWork): Promise<WorkItemId> =>
      withTenant(scope, async (tx) => {
        const key = work.key ?? null;
        const waiting =
          key === null
            ? null
            : await tx.workItem.findFirst({
                where: { ...own, task: work.task, key, state: "waiting", attempt: 0 },
                select: { id: true },
              });
        if (waiting) return asId<"work item">(waiting.id);
        const { id } = await tx.workItem.create({
          data: {
            ...own,
            task: work.task,
            title: work.title,
            key,
            input: asJson(work.input ?? {}),
            createdBy: scope.userId,
          },
          select: { id: true },
        });
        await enqueue(tx, work.task, id, scope.userId);
        return asId<"work item">(id);
      }),

    /** Marks work as running and answers what it needs; `null` when there is nothing left to do. */
    begin: (id: string): Promise<Begun | null> =>
      withTenant(scope, async (tx) => {
        const where = { ...own, id, state: { in: ["waiting", "running"] } };
        const begun = await tx.workItem.updateMany({
          where,
          data: { state: "running", attempt: { increment: 1 }, startedAt: new Date(), nextTryAt: null },
        });
        if (begun.count === 0) return null;
        return tx.workItem.findFirst({ where, select: { input: true, progress: true, attempt: true } });
      }),

    /** Keeps how far it is and where another try goes on; throws {@link WorkCancelledError} when it was stopped. */
    report: (
      id: string,
      at: { readonly done: number; readonly total: number | null; readonly progress: unknown },
    ) =>
      withTenant(scope, async (tx) => {
        const kept = await tx.workItem.updateMany({
          where: { ...own, id, state: "running" },
          data: { done: at.done, total: at.total, progress: asJson(at.progress) },
        });
        if (kept.count === 0) throw new WorkCancelledError();
      }),

    /**
     * Marks work as done in the transaction that keeps what it made, so that either both are kept or neither; throws
     * {@link WorkCancelledError} when it was stopped.
     */
    finishWith: (id: string, result: string): Promise<void> =>
      withTenant(scope, async (tx) => {
        if ((await markDone(tx, id, result)) === 0) throw new WorkCancelledError();
      }),

    /** Stops work that has not ended. */
    cancel: (id: string): Promise<void> =>
      withTenant(scope, async (tx) => {
        const stopped = await tx.workItem.updateMany({
          where: { ...own, id, state: { in: ["waiting", "running"] } },
          data: { state: "cancelled", problem: "", nextTryAt: null, finishedAt: new Date() },
        });
        if (stopped.count === 0) throw new AppError("CONFLICT", "This work has ended already.");
      }),

    /** One piece of work of a kind with what it was asked and how far it is; `null` for an id of no such work. */
    find: (task: WorkTask, id: string): Promise<FoundWork | null> =>
      withTenant(scope, async (tx) => {
        const row = await tx.workItem.findFirst({
          where: { ...own, id, task },
          select: { ...FIELDS, input: true, progress: true },
        });
        return row && { item: toItem(row), input: row.input, progress: row.progress };
      }),

    finish: (id: string, result: string): Promise<void> =>
      withTenant(scope, async (tx) => {
        await markDone(tx, id, result);
      }),

    /** Keeps why a try failed. Without a next try the work has failed. */
    fail: (id: string, problem: string, nextTryAt: Date | null): Promise<void> =>
      withTenant(scope, async (tx) => {
        await tx.workItem.updateMany({
          where: { ...own, id, state: "running" },
          data: {
            state: nextTryAt ? "waiting" : "failed",
            problem,
            nextTryAt,
            finishedAt: nextTryAt ? null : new Date(),
          },
        });
      }),

    /** Puts failed work back into the queue, where it goes on from what it had done. */
    retry: (id: string): Promise<void> =>
      withTenant(scope, async (tx) => {
        const again = await tx.workItem.updateMany({
          where: { ...own, id, state: "failed" },
          data: { state: "waiting", attempt: 0, nextTryAt: null, finishedAt: null },
        });
        const row = await tx.workItem.findFirst({ where: { ...own, id }, select: { task: true } });
        if (!row) throw notFound();
        if (again.count === 0)
          throw new AppError("CONFLICT", "This work is not failed any more. Reload to see it.");
        await enqueue(tx, row.task, id, scope.userId);
      }),

    /** Work in some states, newest first. */
    list: (
      states: readonly WorkState[],
      page: { readonly take: number; readonly before?: string | null },
    ): Promise<readonly WorkItem[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.workItem.findMany({
          where: { ...own, state: { in: [...states] }, ...(page.before ? { id: { lt: page.before } } : {}) },
          orderBy: { id: "desc" },
          take: page.take,
          select: FIELDS,
        });
        return rows.map(toItem);
      }),

    /** The last of the keys of one kind of work up to one, beyond which only a clock that once ran ahead has written. */
    lastKey: (task: WorkTask, upTo: string): Promise<string | null> =>
      withTenant(scope, async (tx) => {
        const where = { ...own, task, key: { lte: upTo } };
        const { _max } = await tx.workItem.aggregate({ where, _max: { key: true } });
        return _max.key;
      }),

    /** The newest unfinished work of one kind, or of one key of it. */
    unfinished: (task: WorkTask, key?: string): Promise<WorkItem | null> =>
      withTenant(scope, async (tx) => {
        const row = await tx.workItem.findFirst({
          where: {
            ...own,
            task,
            ...(key === undefined ? {} : { key }),
            state: { in: ["waiting", "running"] },
          },
          orderBy: { id: "desc" },
          select: FIELDS,
        });
        return row ? toItem(row) : null;
      }),
  };
}

function enqueue(tx: TenantTransaction, task: string, id: string, askedBy: string) {
  const payload = JSON.stringify({ workId: id, askedBy });
  return tx.$executeRaw`
    SELECT enqueue_work(${task}, ${payload}::jsonb, ${id}, max_attempts => ${WORK_TRIES}::int,
      queue => ${ONE_BY_ONE.has(task) ? task : null}::text)`;
}
