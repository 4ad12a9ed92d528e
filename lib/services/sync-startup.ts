import { createHash } from "node:crypto";
import { stageRecords } from "@/lib/db/stage-records";
import { syncReceipts } from "@/lib/db/sync-receipts";
import { withTenant } from "@/lib/db/with-tenant";
import { asId, isUuid } from "@/lib/domain/ids";
import { mergeFields } from "@/lib/domain/merge-fields";
import type { TenantScope } from "@/lib/domain/scope";
import { EDIT_PERMISSION, stagesWith } from "@/lib/domain/stage-permissions";
import { emptyStage, STAGE_FIELDS } from "@/lib/domain/stages";
import { AppError, notFound } from "@/lib/errors";
import { type SyncAnswer, type SyncStartupInput, syncAnswerSchema } from "@/lib/schemas/sync";
import { saveStage } from "./stages";

const STAGE = "startup_record";

/**
 * Takes the changed fields of a startup record from a phone. Fields merge one by one, so that two phones on
 * one record both get through; the upload's own id makes it safe to send again when the answer was lost.
 */
export function syncStartup(
  scope: TenantScope,
  { jobId, clientId, deviceTime, fields }: SyncStartupInput & { readonly jobId: string },
): Promise<SyncAnswer> {
  if (!isUuid(jobId)) throw notFound();
  const job = asId<"job">(jobId);
  const requestHash = hashOf(job, fields);
  return withTenant(scope, async () => {
    await stageRecords(scope).lock(job);
    const earlier = await syncReceipts(scope).find(clientId);
    if (earlier) {
      if (earlier.userId !== scope.userId || earlier.requestHash !== requestHash) {
        throw new AppError(
          "CONFLICT",
          "This upload’s id was used for something else. Send it under a new one.",
        );
      }
      return syncAnswerSchema.parse(earlier.response);
    }
    const record = (await stageRecords(scope).latest(job))[STAGE];
    const current = record?.inputs ?? emptyStage(STAGE);
    const merged = mergeFields(STAGE, STAGE_FIELDS[STAGE], current, fields);
    const isChanged = Object.entries(merged.inputs).some(
      ([key, value]) => value !== current[key as keyof typeof current],
    );
    if (record?.state === "signed" && (isChanged || merged.conflicts.length > 0)) {
      throw new AppError("SIGNED_RECORD", "Startup record is signed. Reopen it with a reason to change it.");
    }
    const version = isChanged
      ? (
          await saveStage(scope, stagesWith(EDIT_PERMISSION, EDIT_PERMISSION[STAGE]), {
            jobId,
            stage: STAGE,
            expectedVersion: record?.version ?? null,
            inputs: merged.inputs,
          })
        ).version
      : (record?.version ?? null);
    const answer = syncAnswerSchema.parse({ version, ...merged });
    await syncReceipts(scope).keep({
      clientId,
      kind: "startup fields",
      requestHash,
      entityId: jobId,
      response: { ...answer, deviceTime },
    });
    return answer;
  });
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
