import {
  CALLBACK_KINDS,
  type Callback,
  type CallbackEvidence,
  type CallbackKind,
  type CallbackState,
  type CallbackWork,
  callbackState,
  type Outcome,
} from "@/lib/domain/callbacks";
import { asId, type CallbackId, type JobId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { AppError, notFound } from "@/lib/errors";
import { appendActivity } from "./activity";
import type { Prisma } from "./generated/client";
import { countCallbacks } from "./job-fact-counts";
import { asDate, asDay, asJson } from "./json";
import { visibleJobs } from "./visibility";
import { withTenant } from "./with-tenant";

export type NewCallback = {
  readonly jobId: JobId;
  readonly kind: CallbackKind;
  readonly reportedOn: string;
  readonly reportedByName: string;
  readonly complaint: string;
  readonly evidence: CallbackEvidence;
};

const WITH_JOB = {
  job: { select: { id: true, number: true, customer: { select: { name: true } } } },
} as const satisfies Prisma.CallbackInclude;
type Row = Prisma.CallbackGetPayload<{ include: typeof WITH_JOB }>;

const LIST_AT_MOST = 500;

export function callbacks(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  return {
    /** Open ones first, then those whose outcome is to be checked, each newest first. */
    list: (jobId: JobId | null): Promise<readonly Callback[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.callback.findMany({
          where: { ...own, job: visibleJobs(scope), ...(jobId ? { jobId } : {}) },
          // open, fixed, closed: the alphabet backwards.
          orderBy: [{ state: "desc" }, { reportedOn: "desc" }, { id: "desc" }],
          take: LIST_AT_MOST,
          include: WITH_JOB,
        });
        return rows.map(toCallback);
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
    work: (jobId: JobId, id: CallbackId, expectedVersion: number, work: CallbackWork): Promise<void> =>
      withTenant(scope, async (tx) => {
        const before = await tx.callback.findFirst({
          where: { ...own, id, jobId },
          include: WITH_JOB,
        });
        if (!before) throw notFound();
        const changed = await tx.callback.updateMany({
          where: { ...own, id, jobId, version: expectedVersion },
          data: {
            ...work,
            fixedOn: asDate(work.fixedOn),
            outcomeCheckedOn: asDate(work.outcomeCheckedOn),
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
        const { cause, fix, fixedOn, outcome, outcomeNote, outcomeCheckedOn } = toCallback(before);
        await appendActivity(tx, scope, {
          action: "callback worked on",
          entity: "callback",
          entityId: id,
          jobId,
          before: { cause, fix, fixedOn, outcome, outcomeNote, outcomeCheckedOn },
          after: work,
        });
      }),
  };
}

function toCallback(row: Row): Callback {
  return {
    id: asId<"callback">(row.id),
    version: row.version,
    job: { id: asId<"job">(row.job.id), number: row.job.number, customerName: row.job.customer.name },
    kind: row.kind in CALLBACK_KINDS ? (row.kind as CallbackKind) : "other",
    state: row.state as CallbackState,
    reportedOn: asDay(row.reportedOn) ?? "",
    reportedByName: row.reportedByName,
    complaint: row.complaint,
    evidence: { fallsShort: [], log: null, settings: [], ...(row.evidence as Partial<CallbackEvidence>) },
    cause: row.cause,
    fix: row.fix,
    fixedOn: asDay(row.fixedOn),
    outcome: row.outcome as Outcome | null,
    outcomeNote: row.outcomeNote,
    outcomeCheckedOn: asDay(row.outcomeCheckedOn),
  };
}
