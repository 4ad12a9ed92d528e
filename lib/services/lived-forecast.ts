import { createHash } from "node:crypto";
import { forecastsLived } from "@/lib/db/forecasts-lived";
import type { JobContext } from "@/lib/domain/evaluate";
import { type KeptInputs, NO_CHANGES } from "@/lib/domain/forecast";
import { HOLD_VERSION, type LivedInForce } from "@/lib/domain/forecast-lived/kept";
import type { TenantScope } from "@/lib/domain/scope";
import { designedForecast, designHash } from "./designed-forecast";

/** What a job's records say now, for a forecast held against its log: with the assumptions of the kept forecast. */
export function designToHold(context: JobContext) {
  return designedForecast(context, "As the records stand", context.forecast?.inputs.changed ?? NO_CHANGES);
}

/** Hash of everything a forecast held against a log follows from. */
export function holdHash(inputs: KeptInputs, weatherSha256: string, importId: string): string {
  return createHash("sha256")
    .update([designHash(inputs, weatherSha256), importId, HOLD_VERSION].join(" "))
    .digest("hex");
}

/** What was kept of a log, with whether the records, the weather or the engine are others now. */
export async function livedInForce(
  scope: TenantScope,
  importId: string,
  context: JobContext,
  weatherSha256: string | null,
): Promise<LivedInForce | null> {
  const kept = await forecastsLived(scope).find(importId);
  if (kept === null) return null;
  const now = designToHold(context);
  const same =
    now.ready &&
    weatherSha256 !== null &&
    holdHash(now.value.inputs, weatherSha256, importId) === kept.inputsHash;
  return { ...kept.summary, heldAt: kept.heldAt, heldByName: kept.heldByName, outdated: !same };
}
