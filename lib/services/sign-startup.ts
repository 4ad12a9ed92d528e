import { createHash } from "node:crypto";
import { stageRecords } from "@/lib/db/stage-records";
import { syncReceipts } from "@/lib/db/sync-receipts";
import { withTenant } from "@/lib/db/with-tenant";
import { asId, isUuid } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { SIGN_PERMISSION, stagesWith } from "@/lib/domain/stage-permissions";
import { AppError, notFound } from "@/lib/errors";
import type { SignOnPhoneInput } from "@/lib/schemas/field";
import { signStage } from "./stages";

const STAGE = "startup_record";

/**
 * Signs the startup record with the signature given on a phone. The record is signed as it stands here, with
 * what others have entered; the phone sends its readings first. Safe to repeat.
 */
export function signStartupFromPhone(
  scope: TenantScope,
  input: SignOnPhoneInput & { readonly jobId: string },
): Promise<{ readonly version: number; readonly state: "signed" }> {
  const { jobId, clientId, deviceTime, signatureName } = input;
  if (!isUuid(jobId)) throw notFound();
  const job = asId<"job">(jobId);
  const requestHash = createHash("sha256")
    .update(JSON.stringify([job, "signature", signatureName]))
    .digest("hex");
  return withTenant(scope, async () => {
    await stageRecords(scope).lock(job);
    const earlier = await syncReceipts(scope).find(clientId);
    if (earlier && (earlier.userId !== scope.userId || earlier.requestHash !== requestHash)) {
      throw new AppError(
        "CONFLICT",
        "This upload’s id was used for something else. Send it under a new one.",
      );
    }
    if (!earlier) {
      const record = (await stageRecords(scope).latest(job))[STAGE];
      await signStage(scope, stagesWith(SIGN_PERMISSION, SIGN_PERMISSION[STAGE]), {
        jobId,
        stage: STAGE,
        expectedVersion: record?.version ?? 0,
        signatureName,
      });
      await syncReceipts(scope).keep({
        clientId,
        kind: "startup signature",
        requestHash,
        entityId: jobId,
        response: { deviceTime },
      });
    }
    const version = (await stageRecords(scope).latest(job))[STAGE]?.version ?? 0;
    return { version, state: "signed" };
  });
}
