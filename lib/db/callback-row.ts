import {
  CALLBACK_CAUSES,
  CALLBACK_KINDS,
  type Callback,
  type CallbackCause,
  type CallbackEvidence,
  type CallbackKind,
  type CallbackState,
  type Outcome,
} from "@/lib/domain/callbacks";
import { asId, type JobId } from "@/lib/domain/ids";
import type { Prisma } from "./generated/client";
import { asDay } from "./json";

export type CallbackFilter = {
  readonly jobId: JobId | null;
  readonly state: CallbackState | null;
  readonly kind: CallbackKind | null;
  /** Reported in this month, `2026-07`; left out: whenever. */
  readonly reportedIn?: string;
};

/** The days of a month such as `2026-07`. */
export function daysOfMonth(month: string) {
  const first = new Date(`${month}-01T00:00:00Z`);
  return { gte: first, lt: new Date(Date.UTC(first.getUTCFullYear(), first.getUTCMonth() + 1)) };
}

/** What a callback is read with. */
export const WITH_JOB = {
  job: { select: { id: true, number: true, customer: { select: { name: true } } } },
  outcomeSignedByMember: { select: { name: true } },
} as const satisfies Prisma.CallbackInclude;
type Row = Prisma.CallbackGetPayload<{ include: typeof WITH_JOB }>;

/** A callback as the rest of the application knows it. */
export function toCallback(row: Row): Callback {
  return {
    id: asId<"callback">(row.id),
    version: row.version,
    job: { id: asId<"job">(row.job.id), number: row.job.number, customerName: row.job.customer.name },
    kind: row.kind in CALLBACK_KINDS ? (row.kind as CallbackKind) : "other",
    state: row.state as CallbackState,
    reportedOn: asDay(row.reportedOn) ?? "",
    reportedByName: row.reportedByName,
    complaint: row.complaint,
    evidence: {
      fallsShort: [],
      log: null,
      settings: [],
      days: null,
      ...(row.evidence as Partial<CallbackEvidence>),
    },
    causeKind:
      row.causeRuleId !== null && row.causeRuleId in CALLBACK_CAUSES
        ? (row.causeRuleId as CallbackCause)
        : null,
    cause: row.cause,
    reopenedByLog: row.reopenedByLog,
    dueOn: asDay(row.dueOn),
    fix: row.fix,
    fixedOn: asDay(row.fixedOn),
    outcome: row.outcome as Outcome | null,
    outcomeNote: row.outcomeNote,
    outcomeCheckedOn: asDay(row.outcomeCheckedOn),
    outcomeSigned:
      row.outcomeSignedByMember && row.outcomeSignedAt
        ? { by: row.outcomeSignedByMember.name, at: row.outcomeSignedAt.toISOString() }
        : null,
  };
}
