import { asId } from "@/lib/domain/ids";
import type { RecordState, StageRecord } from "@/lib/domain/jobs";
import { readStoredInputs, type StageKey } from "@/lib/domain/stages";
import type { Finding, Verdict } from "@/lib/engineering/findings";
import type { Prisma } from "./generated/client";

/** The columns a record is read with. */
export const FIELDS = {
  id: true,
  jobId: true,
  stage: true,
  revision: true,
  schemaVersion: true,
  state: true,
  version: true,
  inputs: true,
  findings: true,
  verdict: true,
  engineVersion: true,
  signedAt: true,
  signatureName: true,
  reopenReason: true,
  updatedAt: true,
  updatedByMember: { select: { name: true } },
} as const satisfies Prisma.StageRecordSelect;

export type StageRecordRow = Prisma.StageRecordGetPayload<{ select: typeof FIELDS }>;

/** Only what differs, for the trail. */
export function changedValues(before: unknown, after: Readonly<Record<string, unknown>>) {
  const old = (before ?? {}) as Readonly<Record<string, unknown>>;
  const keys = Object.keys(after).filter((key) => (old[key] ?? null) !== (after[key] ?? null));
  const pick = (from: Readonly<Record<string, unknown>>) =>
    Object.fromEntries(keys.map((key) => [key, from[key] ?? null]));
  return { before: pick(old), after: pick(after) };
}

/** A row as the domain knows it. */
export function toRecord(row: StageRecordRow): StageRecord {
  const stage = row.stage as StageKey;
  return {
    id: asId<"stage record">(row.id),
    jobId: asId<"job">(row.jobId),
    stage,
    revision: row.revision,
    state: row.state as RecordState,
    version: row.version,
    inputs: readStoredInputs(stage, row.schemaVersion, row.inputs),
    findings: row.findings as unknown as readonly Finding[],
    verdict: row.verdict as Verdict | null,
    engineVersion: row.engineVersion,
    signedAt: row.signedAt?.toISOString() ?? null,
    signatureName: row.signatureName,
    reopenReason: row.reopenReason,
    updatedAt: row.updatedAt.toISOString(),
    updatedByName: row.updatedByMember.name,
  };
}
