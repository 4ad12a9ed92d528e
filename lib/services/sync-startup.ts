import { createHash } from "node:crypto";
import { fieldContacts } from "@/lib/db/field-contacts";
import { heldValues } from "@/lib/db/held-values";
import { stageRecords } from "@/lib/db/stage-records";
import { syncReceipts } from "@/lib/db/sync-receipts";
import { withTenant } from "@/lib/db/with-tenant";
import { asId, isUuid, type JobId } from "@/lib/domain/ids";
import type { StageRecord } from "@/lib/domain/jobs";
import { type Merged, mergeFields } from "@/lib/domain/merge-fields";
import type { TenantScope } from "@/lib/domain/scope";
import { emptyStage, STAGE_FIELDS } from "@/lib/domain/stages";
import { AppError, notFound } from "@/lib/errors";
import {
  type SyncAnswer,
  type SyncStartupInput,
  type UploadOutcome,
  uploadOutcomeSchema,
} from "@/lib/schemas/sync";
import { currentBundleTag } from "./field-bundle";
import { getJob } from "./jobs";
import { saveLocked } from "./stages";

const STAGE = "startup_record";
type Startup = StageRecord<typeof STAGE>;

/**
 * Takes the changed fields of a startup record from a phone. Fields merge one by one, so that two phones on
 * one record both get through; the upload's own id makes it safe to send again when the answer was lost:
 * what became of it is told as the first time, the record as it is now. What comes after signing is kept for
 * the office to decide.
 */
export function syncStartup(
  scope: TenantScope,
  { jobId, ...upload }: SyncStartupInput & { readonly jobId: string },
): Promise<SyncAnswer> {
  if (!isUuid(jobId)) throw notFound();
  const job = asId<"job">(jobId);
  const requestHash = hashOf(job, upload.fields);
  return withTenant(scope, async () => {
    await fieldContacts(scope).lockAndNote(job, upload.waiting);
    // A phone that asks for news hears here that there is none, and need not ask again. Read before the save, of which a
    // bundle's tag knows the version alone: from the save's entry on the trail until the end the company's writers wait.
    const tagAt = upload.bundleTag ? await currentBundleTag(scope, job) : null;
    const answer = await takeUpload(scope, job, upload, requestHash);
    const tag = tagAt?.(answer.version ?? 0) ?? null;
    return tag === null ? answer : { ...answer, bundleTag: tag };
  });
}

async function takeUpload(
  scope: TenantScope,
  job: JobId,
  upload: SyncStartupInput,
  requestHash: string,
): Promise<SyncAnswer> {
  const earlier = await earlierOutcome(scope, upload.clientId, requestHash);
  const records = await stageRecords(scope).latest(job);
  if (earlier) return answer(earlier, records[STAGE]);
  const taken = await takeFields(scope, job, upload, records[STAGE]);
  // Before the save, which comes last: from its entry on the trail until the end the company's writers wait.
  await syncReceipts(scope).keep({
    clientId: upload.clientId,
    kind: "startup fields",
    requestHash,
    entityId: job,
    response: { ...taken.outcome, deviceTime: upload.deviceTime },
  });
  if (taken.inputs === null) return answer(taken.outcome, records[STAGE]);
  const saved = await saveLocked(scope, await getJob(scope, job), records, {
    stage: STAGE,
    expectedVersion: records[STAGE]?.version ?? null,
    inputs: taken.inputs,
  });
  return answer(taken.outcome, { ...saved, state: "draft" });
}

/** What became of an upload, and the inputs to save, or `null` when nothing is to be. */
type Taken = { readonly outcome: UploadOutcome; readonly inputs: Merged["inputs"] | null };

/** What was answered to this upload before; `null` when it is new. */
async function earlierOutcome(
  scope: TenantScope,
  clientId: string,
  requestHash: string,
): Promise<UploadOutcome | null> {
  const earlier = await syncReceipts(scope).find(clientId);
  if (!earlier) return null;
  if (earlier.userId !== scope.userId || earlier.requestHash !== requestHash) {
    throw new AppError("CONFLICT", "This upload’s id was used for something else. Send it under a new one.");
  }
  return uploadOutcomeSchema.parse(earlier.response);
}

async function takeFields(
  scope: TenantScope,
  job: JobId,
  upload: SyncStartupInput,
  record: Startup | null,
): Promise<Taken> {
  const current = record?.inputs ?? emptyStage(STAGE);
  const merged = mergeFields(STAGE, STAGE_FIELDS[STAGE], current, upload.fields);
  if (record?.state === "signed")
    return { outcome: await holdForOffice(scope, job, upload, current, merged), inputs: null };
  const isChanged = Object.entries(merged.inputs).some(
    ([key, value]) => value !== current[key as keyof typeof current],
  );
  return { outcome: { ...outcomeOf(merged), waiting: [] }, inputs: isChanged ? merged.inputs : null };
}

/** A signed record takes nothing; nothing is lost either. */
async function holdForOffice(
  scope: TenantScope,
  job: JobId,
  upload: SyncStartupInput,
  current: Startup["inputs"],
  merged: Merged,
): Promise<UploadOutcome> {
  const standing = (key: string) => (current as Readonly<Record<string, unknown>>)[key] ?? null;
  const refused = new Set(merged.problems.map((one) => one.field));
  const late = Object.entries(upload.fields).filter(
    ([key]) => !refused.has(key) && !(key in merged.accepted && merged.accepted[key] === standing(key)),
  );
  await heldValues(scope).keep(
    late.map(([fieldPath, { base, value }]) => ({
      jobId: job,
      stage: STAGE,
      fieldPath,
      base,
      value: merged.accepted[fieldPath] ?? value,
      reason: "after signing",
      clientId: upload.clientId,
      deviceTime: upload.deviceTime,
    })),
  );
  const waiting = late.map(([key]) => key);
  const kept = Object.entries(merged.accepted).filter(([key]) => !waiting.includes(key));
  return {
    accepted: Object.fromEntries(kept),
    conflicts: [],
    problems: [...merged.problems],
    waiting,
  };
}

function answer(
  outcome: UploadOutcome,
  record: (Pick<Startup, "version" | "state"> & { readonly inputs: object }) | null,
): SyncAnswer {
  return {
    ...outcome,
    version: record?.version ?? null,
    state: record === null ? null : record.state === "signed" ? "signed" : "draft",
    inputs: { ...(record?.inputs ?? emptyStage(STAGE)) },
    serverTime: new Date().toISOString(),
  };
}

function outcomeOf({ accepted, conflicts, problems }: Merged): Omit<UploadOutcome, "waiting"> {
  return { accepted, conflicts: [...conflicts], problems: [...problems] };
}

/** The same changes in any order are the same request. */
function hashOf(jobId: string, fields: SyncStartupInput["fields"]): string {
  const sorted = Object.entries(fields)
    .toSorted(([one], [other]) => (one < other ? -1 : 1))
    .map(([key, { base, value }]) => [key, base, value]);
  return createHash("sha256")
    .update(JSON.stringify([jobId, sorted]))
    .digest("hex");
}
