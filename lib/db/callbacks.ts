import {
  CALLBACK_KINDS,
  CALLBACK_STATES,
  type Callback,
  type CallbackEvidence,
  type CallbackKind,
  type CallbackWork,
  callbackState,
  workOf,
} from "@/lib/domain/callbacks";
import { asId, type CallbackId, type JobId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { AppError, notFound } from "@/lib/errors";
import { appendActivity } from "./activity";
import { type CallbackFilter, daysOfMonth, toCallback, WITH_JOB } from "./callback-row";
import { countCallbacks } from "./job-fact-counts";
import { asDate, asJson } from "./json";
import { visibleJobs } from "./visibility";
import { withTenant } from "./with-tenant";

export type NewCallback = {
  readonly jobId: JobId;
  readonly kind: CallbackKind;
  readonly reportedOn: string;
  readonly reportedByName: string;
  readonly complaint: string;
  readonly evidence: CallbackEvidence;
  readonly dueOn: string | null;
};

export function callbacks(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  const whereOf = ({ jobId, state, kind, reportedIn }: CallbackFilter) => ({
    ...own,
    job: visibleJobs(scope),
    ...(jobId ? { jobId } : {}),
    ...(state ? { state } : {}),
    ...(kind ? { kind } : {}),
    ...(reportedIn ? { reportedOn: daysOfMonth(reportedIn) } : {}),
  });
  return {
    /** A page: open ones first, then those whose outcome is to be checked, each the most pressing first. */
    list: (
      filter: CallbackFilter,
      page: { readonly take: number; readonly skip: number },
    ): Promise<readonly Callback[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.callback.findMany({
          where: whereOf(filter),
          // open, fixed, closed: the alphabet backwards.
          orderBy: [
            { state: "desc" },
            { dueOn: { sort: "asc", nulls: "last" } },
            { reportedOn: "desc" },
            { id: "desc" },
          ],
          ...page,
          include: WITH_JOB,
        });
        return rows.map(toCallback);
      }),

    count: (filter: CallbackFilter): Promise<number> =>
      withTenant(scope, (tx) => tx.callback.count({ where: whereOf(filter) })),

    find: (id: CallbackId): Promise<Callback | null> =>
      withTenant(scope, async (tx) => {
        const row = await tx.callback.findFirst({
          where: { ...own, id, job: visibleJobs(scope) },
          include: WITH_JOB,
        });
        return row && toCallback(row);
      }),

    /** Opens a fixed or closed callback again because the house's log disagrees. The caller holds the job's lock. */
    reopen: (callback: Callback, said: { readonly reason: string; readonly dueOn: string }): Promise<void> =>
      withTenant(scope, async (tx) => {
        await tx.callback.updateMany({
          where: { ...own, id: callback.id },
          data: {
            state: "open",
            outcome: "did_not_work",
            // A log is no person: whoever signed the outcome did not sign this.
            outcomeSignedBy: null,
            outcomeSignedAt: null,
            reopenedByLog: said.reason,
            dueOn: asDate(said.dueOn),
            version: { increment: 1 },
            updatedAt: new Date(),
            updatedBy: scope.userId,
          },
        });
        await countCallbacks(tx, scope, callback.job.id);
        await appendActivity(tx, scope, {
          action: "callback opened again by a log",
          entity: "callback",
          entityId: callback.id,
          jobId: callback.job.id,
          before: { state: CALLBACK_STATES[callback.state] },
          after: { reason: said.reason },
        });
      }),

    jobOf: (id: CallbackId): Promise<JobId | null> =>
      withTenant(scope, async (tx) => {
        const row = await tx.callback.findFirst({
          where: { ...own, id, job: visibleJobs(scope) },
          select: { jobId: true },
        });
        return row && asId<"job">(row.jobId);
      }),

    /** The caller holds the job's lock, so that the counts count every callback. */
    add: (input: NewCallback): Promise<CallbackId> =>
      withTenant(scope, async (tx) => {
        const { jobId, kind, reportedByName, complaint } = input;
        const made = await tx.callback.create({
          data: {
            ...own,
            jobId,
            kind,
            reportedByName,
            complaint,
            reportedOn: new Date(`${input.reportedOn}T00:00:00Z`),
            dueOn: asDate(input.dueOn),
            humidityComplaint: CALLBACK_KINDS[kind].humidity,
            evidence: asJson(input.evidence),
            createdBy: scope.userId,
            updatedBy: scope.userId,
          },
          select: { id: true },
        });
        await countCallbacks(tx, scope, jobId);
        await appendActivity(tx, scope, {
          action: "callback logged",
          entity: "callback",
          entityId: made.id,
          jobId,
          after: { kind: CALLBACK_KINDS[kind].label, reportedOn: input.reportedOn, complaint },
        });
        return asId<"callback">(made.id);
      }),

    /** Keeps cause, fix and outcome. The caller holds the job's lock. */
    work: (
      jobId: JobId,
      id: CallbackId,
      expectedVersion: number,
      work: CallbackWork,
      signature: "signed now" | "as before",
    ): Promise<void> =>
      withTenant(scope, async (tx) => {
        const before = await tx.callback.findFirst({
          where: { ...own, id, jobId },
          include: WITH_JOB,
        });
        if (!before) throw notFound();
        const { causeKind, ...written } = work;
        const changed = await tx.callback.updateMany({
          where: { ...own, id, jobId, version: expectedVersion },
          data: {
            ...written,
            causeRuleId: causeKind,
            dueOn: asDate(work.dueOn),
            reopenedByLog: work.outcome === "worked" ? "" : before.reopenedByLog,
            fixedOn: asDate(work.fixedOn),
            outcomeCheckedOn: asDate(work.outcomeCheckedOn),
            ...(signature === "signed now"
              ? { outcomeSignedBy: scope.userId, outcomeSignedAt: new Date() }
              : work.outcome === null
                ? { outcomeSignedBy: null, outcomeSignedAt: null }
                : {}),
            state: callbackState(work),
            version: { increment: 1 },
            updatedAt: new Date(),
            updatedBy: scope.userId,
          },
        });
        if (changed.count === 0) {
          throw new AppError(
            "CONFLICT",
            "Someone else changed this callback just now. Reload to see it; then make your change again.",
          );
        }
        await countCallbacks(tx, scope, jobId);
        await appendActivity(tx, scope, {
          action: "callback worked on",
          entity: "callback",
          entityId: id,
          jobId,
          before: workOf(toCallback(before)),
          after: { ...work, ...(signature === "signed now" ? { outcomeSigned: "by this person" } : {}) },
        });
      }),
  };
}
