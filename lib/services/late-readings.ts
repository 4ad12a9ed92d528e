import { attachments } from "@/lib/db/attachments";
import { type HeldValue, heldValues } from "@/lib/db/held-values";
import { stageRecords } from "@/lib/db/stage-records";
import { withTenant } from "@/lib/db/with-tenant";
import type { JobFile } from "@/lib/domain/field-bundle";
import { asId } from "@/lib/domain/ids";
import { mergeFields, type PlainValue } from "@/lib/domain/merge-fields";
import type { TenantScope } from "@/lib/domain/scope";
import { EDIT_PERMISSION, stagesWith } from "@/lib/domain/stage-permissions";
import { emptyStage, STAGE_FIELDS, STAGE_NAMES } from "@/lib/domain/stages";
import { AppError, invalidInput, notFound } from "@/lib/errors";
import type { DecideLateInput } from "@/lib/schemas/field";
import { saveStage } from "./stages";

export type LateReadings = {
  /** Each with what stands in the record now. */
  readonly values: readonly (HeldValue & { readonly now: PlainValue })[];
  readonly photos: readonly JobFile[];
};

/** What came too late or was handed over, for the office to decide field by field. */
export function lateReadings(scope: TenantScope, jobId: string): Promise<LateReadings> {
  return withTenant(scope, async () => {
    const values = await heldValues(scope).waiting(jobId);
    const photos = await attachments(scope).held(jobId);
    const records = values.length === 0 ? null : await stageRecords(scope).latest(asId<"job">(jobId));
    return {
      photos,
      values: values.map((one) => {
        const inputs = (records?.[one.stage]?.inputs ?? {}) as Readonly<Record<string, PlainValue>>;
        return { ...one, now: inputs[one.fieldPath] ?? null };
      }),
    };
  });
}

/** Takes one late value into the open record, over what stands there, or discards it. Both are on the trail. */
export function decideLateValue(scope: TenantScope, { jobId, id, take }: DecideLateInput): Promise<void> {
  const job = asId<"job">(jobId);
  return withTenant(scope, async () => {
    await stageRecords(scope).lock(job);
    const held = (await heldValues(scope).waiting(job)).find((one) => one.id === id.toLowerCase());
    if (!held) throw notFound();
    await heldValues(scope).decide(job, held.id, take ? "taken" : "discarded");
    if (!take) return;
    const { stage, fieldPath, value } = held;
    const record = (await stageRecords(scope).latest(job))[stage];
    if (record?.state === "signed") {
      throw new AppError(
        "SIGNED_RECORD",
        `${STAGE_NAMES[stage]} is signed. Reopen it with a reason, then take this value.`,
      );
    }
    const current = (record?.inputs ?? emptyStage(stage)) as Readonly<Record<string, PlainValue>>;
    const change = { base: current[fieldPath] ?? null, value };
    const merged = mergeFields(stage, STAGE_FIELDS[stage], current, { [fieldPath]: change });
    if (merged.problems.length > 0) throw invalidInput(merged.problems);
    if (merged.inputs[fieldPath] === current[fieldPath]) return;
    await saveStage(scope, stagesWith(EDIT_PERMISSION, EDIT_PERMISSION[stage]), {
      jobId,
      stage,
      expectedVersion: record?.version ?? null,
      inputs: merged.inputs,
    });
  });
}

/** Takes one late picture into the job, or discards it. */
export function decideLatePhoto(scope: TenantScope, { jobId, id, take }: DecideLateInput): Promise<void> {
  return attachments(scope).decide(jobId, id, take);
}
