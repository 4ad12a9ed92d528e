import { createHash } from "node:crypto";
import type { JobContext } from "@/lib/domain/evaluate";
import {
  FORECAST_MEMBERS,
  FORECAST_SEED,
  FORECAST_VERSION,
  type ForecastChanges,
  type ForecastInForce,
  type ForecastPart,
  jobSetup,
  type KeptForecast,
  type KeptInputs,
  missingOf,
  optionSetup,
  type SystemAssumption,
} from "@/lib/domain/forecast";
import { stableText } from "@/lib/engineering/simulation";

/** The design as its records stand, ready to be forecast. */
export type DesignedForecast = {
  readonly inputs: KeptInputs;
  readonly assumptions: readonly SystemAssumption[];
};

/** What a job's records say now, as a forecast takes it, or what they lack. */
export function designedForecast(
  context: JobContext,
  name: string,
  changed: ForecastChanges,
): ForecastPart<DesignedForecast> {
  const job = jobSetup(context, changed.house);
  const setup = optionSetup(context, name, changed.system);
  if (!job.ready || !setup.ready || job.value.house.kind !== "load summary")
    return { ready: false, missing: missingOf([job, setup]) };
  const { humidityLimitPct, house } = job.value;
  const { option, assumptions } = setup.value;
  return {
    ready: true,
    value: { inputs: { load: house.load, changed, option, humidityLimitPct }, assumptions },
  };
}

/** Hash of everything a kept forecast follows from. The option's name changes no number. */
export function designHash({ option, ...inputs }: KeptInputs, weatherSha256: string): string {
  const all = {
    ...inputs,
    option: { ...option, name: "" },
    weatherSha256,
    engineVersion: FORECAST_VERSION,
    members: FORECAST_MEMBERS,
    seed: FORECAST_SEED,
  };
  return createHash("sha256").update(stableText(all)).digest("hex");
}

/** A job's kept forecast, with whether its design, weather or engine are others now. */
export function heldAgainstDesign(
  kept: KeptForecast | null,
  context: JobContext,
  weatherSha256: string | null,
): ForecastInForce | null {
  if (kept === null) return null;
  const now = designedForecast(context, "", kept.inputs.changed);
  const same =
    now.ready && weatherSha256 !== null && designHash(now.value.inputs, weatherSha256) === kept.inputsHash;
  return { ...kept, stale: !same };
}
