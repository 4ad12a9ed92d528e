import type { JobId } from "@/lib/domain/ids";
import type { StageRecord } from "@/lib/domain/jobs";
import type { TenantScope } from "@/lib/domain/scope";
import { STAGE_NAMES, type StageKey } from "@/lib/domain/stages";
import { AppError, notFound } from "@/lib/errors";
import { changedValues, FIELDS, type StageRecordRow, toRecord } from "./stage-record-row";
import { jobIsVisible } from "./visibility";
import type { TenantTransaction } from "./with-tenant";

/** What each open transaction holds already: one use case asks again in every step it is made of. */
const held = new WeakMap<TenantTransaction, Set<string>>();

/**
 * Saves of one job wait for each other, so that a check and its write cannot be parted.
 *
 * @returns False when the transaction held the job already: what it has read of it since still stands.
 */
export function lockJob(tx: TenantTransaction, scope: TenantScope, jobId: JobId): Promise<boolean> {
  return holdJob(
    tx,
    scope,
    jobId,
    () =>
      tx.$queryRaw<readonly unknown[]>`
        SELECT 1 FROM job WHERE ${jobIsVisible(scope)} AND job.id = ${jobId}::uuid FOR UPDATE OF job`,
  );
}

/** The same with a statement of the caller's, which locks the job's row and answers a row when it may be seen. */
export async function holdJob(
  tx: TenantTransaction,
  scope: TenantScope,
  jobId: JobId,
  lock: () => Promise<readonly unknown[]>,
): Promise<boolean> {
  const mine = held.get(tx) ?? new Set();
  const key = `${scope.userId} ${jobId}`;
  if (mine.has(key)) return false;
  if ((await lock()).length === 0) throw notFound();
  held.set(tx, mine.add(key));
  return true;
}

/** The newest revision of a stage, as stored. */
export async function latestRow(
  tx: TenantTransaction,
  scope: TenantScope,
  jobId: JobId,
  stage: StageKey,
): Promise<StageRecordRow | null> {
  return tx.stageRecord.findFirst({
    where: { tenantId: scope.tenantId, jobId, stage },
    orderBy: { revision: "desc" },
    select: FIELDS,
  });
}

/** The same as the domain knows it. */
export async function latestRecord(
  tx: TenantTransaction,
  scope: TenantScope,
  jobId: JobId,
  stage: StageKey,
): Promise<StageRecord | null> {
  const row = await latestRow(tx, scope, jobId, stage);
  return row && toRecord(row);
}

/** True when the draft already holds these values: the answer to an earlier save was lost, or nothing was changed. */
export function isSavedAlready(current: StageRecord, inputs: Readonly<Record<string, unknown>>): boolean {
  if (current.state !== "draft") return false;
  return Object.keys(changedValues(current.inputs, inputs).after).length === 0;
}

/** A save must name the version it started from; a signed record takes none. */
export function refuseIfMoved(
  current: StageRecord | null,
  write: { readonly stage: StageKey; readonly expectedVersion: number | null },
): void {
  if (current && current.state !== "draft") {
    throw new AppError(
      "SIGNED_RECORD",
      `${STAGE_NAMES[write.stage]} is signed. Reopen it with a reason to change it.`,
    );
  }
  if ((current?.version ?? null) === write.expectedVersion) return;
  throw new AppError(
    "CONFLICT",
    `${current?.updatedByName ?? "Someone"} saved this record while you were typing. Your values are still here; theirs are shown beside them.`,
    { details: { theirs: current?.inputs ?? null, version: current?.version ?? null } },
  );
}
