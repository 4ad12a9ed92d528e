import type { JobId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { EDIT_PERMISSION, SIGN_PERMISSION, stagesWith } from "@/lib/domain/stage-permissions";
import type { StageInputs, StageKey } from "@/lib/domain/stages";
import { AppError } from "@/lib/errors";
import { createJobSchema } from "@/lib/schemas/job";
import { createJob } from "@/lib/services/jobs";
import { saveStage, signStage } from "@/lib/services/stages";

/** Opens a job as the form would. */
export function openJob(
  scope: TenantScope,
  given: { readonly techIds?: readonly string[]; readonly weatherFileId?: string } = {},
): Promise<JobId> {
  return createJob(
    scope,
    createJobSchema.parse({
      customerName: "Ann Ember",
      addressLine: "12 Elm Way",
      city: "Bay",
      region: "TX",
      postalCode: "77000",
      elevationFt: "30 ft",
      ...given,
    }),
  );
}

/** Everything a load summary needs before it can be signed. Round invented numbers. */
export const LOAD: Partial<StageInputs["load_summary"]> = {
  loadSource: "Worksheet of 2026-05-01",
  sensibleCoolingBtuh: 22_000,
  latentCoolingBtuh: 6_000,
  heatingBtuh: 30_000,
  indoorCoolingDbF: 75,
  indoorCoolingRhPct: 50,
  indoorHeatingDbF: 70,
  outdoorCoolingDbF: 94,
  outdoorCoolingWbF: 77,
  outdoorHeatingDbF: 30,
  humidityLimitPct: 55,
  floorAreaFt2: 2_000,
  bedrooms: 3,
};

/** What a startup record needs before it can be signed. Round invented readings. */
export const STARTUP: Partial<StageInputs["startup_record"]> = {
  outdoorDbF: 92,
  refrigerant: "R-410A",
  secondAirflowCfm: 1_000,
  secondReturnDbF: 75,
  secondReturnWbF: 63,
  secondSupplyDbF: 55,
  secondSupplyWbF: 54,
};

/** Saves as the action does, with the person's own permission for the stage. */
export function save(
  scope: TenantScope,
  jobId: string,
  stage: StageKey,
  inputs: Readonly<Record<string, unknown>>,
  expectedVersion: number | null = null,
): Promise<{ readonly version: number }> {
  const allowed = stagesWith(EDIT_PERMISSION, EDIT_PERMISSION[stage]);
  return saveStage(scope, allowed, { jobId, stage, expectedVersion, inputs });
}

/** Signs as the action does. */
export function sign(
  scope: TenantScope,
  jobId: string,
  stage: StageKey,
  expectedVersion: number,
): Promise<void> {
  const allowed = stagesWith(SIGN_PERMISSION, SIGN_PERMISSION[stage]);
  return signStage(scope, allowed, { jobId, stage, expectedVersion, signatureName: "A. Signer" });
}

/** The refusal of something that must be refused. */
export async function refusedBy(attempt: Promise<unknown>): Promise<AppError> {
  try {
    await attempt;
  } catch (error) {
    if (error instanceof AppError) return error;
    throw error;
  }
  throw new Error("It was allowed.");
}
