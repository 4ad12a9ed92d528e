import type { JobId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { STAGE_NAMES, type StageKey } from "@/lib/domain/stages";
import { AppError, notFound } from "@/lib/errors";
import { changedValues, FIELDS, type StageRecordRow, toRecord } from "./stage-record-row";
import { visibleJobs } from "./visibility";
import type { TenantTransaction } from "./with-tenant";

/** What each open transaction holds already: one use case asks again in every step it is made of. */
const held = new WeakMap<TenantTransaction, Set<string>>();

/** Saves of one job wait for each other, so that a check and its write cannot be parted. */
export async function lockJob(tx: TenantTransaction, scope: TenantScope, jobId: JobId): Promise<void> {
  const mine = held.get(tx) ?? new Set();
  const lock = `${scope.userId} ${jobId}`;
  if (mine.has(lock)) return;
  const visible = await tx.job.findFirst({
    where: { AND: [visibleJobs(scope), { id: jobId }] },
    select: { id: true },
  });
  if (!visible) throw notFound();
  await tx.$queryRaw`SELECT 1 FROM job WHERE tenant_id = ${scope.tenantId}::uuid AND id = ${jobId}::uuid FOR UPDATE`;
  held.set(tx, mine.add(lock));
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

/** True when the draft already holds these values: the answer to an earlier save was lost, or nothing was changed. */
export function isSavedAlready(current: StageRecordRow, inputs: Readonly<Record<string, unknown>>): boolean {
  if (current.state !== "draft") return false;
  return Object.keys(changedValues(toRecord(current).inputs, inputs).after).length === 0;
}

/** A save must name the version it started from; a signed record takes none. */
export function refuseIfMoved(
  current: StageRecordRow | null,
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
    `${current?.updatedByMember.name ?? "Someone"} saved this record while you were typing. Your values are still here; theirs are shown beside them.`,
    { details: { theirs: current ? toRecord(current).inputs : null, version: current?.version ?? null } },
  );
}
