import type { LimitValues } from "../limit-definition";
import type { LatentRatioInput } from "../moisture";
import { requireRange } from "../units";
import { type HouseAfternoon, requireHouseAfternoon } from "./afternoon";
import { controlsLimits } from "./limits";
import {
  type AsEntered,
  type BoardSettings,
  type ControlSettings,
  requireBoardRanges,
  requireSettingRanges,
} from "./settings";

/** A trusted instrument and the thermostat's own reading beside it, taken without the correction. */
export type CorrectionReadings = { readonly trusted: number; readonly thermostatUncorrected: number };

/** How a coil takes up and gives back water: the three numbers of the moisture module's latent ratio. */
export type WetCoil = Pick<LatentRatioInput, "timeConstantS" | "wetTimeS" | "gamma"> & {
  /** Where the three come from, for the sentence: "coil as the forecast assumes it". */
  readonly knownBy: string;
};

/** What was set, how it is wired, and the house it serves. What has not been entered is null. */
export type ControlFindingsInput = {
  readonly settings: AsEntered<ControlSettings>;
  readonly board: AsEntered<BoardSettings>;
  /** Capacity chosen in the equipment selection, tons. */
  readonly selectedCapacityTons: number | null;
  readonly equipmentStages: 1 | 2 | null;
  readonly coolingStagesWired: 1 | 2 | null;
  readonly fanStages: 1 | 2 | null;
  readonly fanStagesWired: 1 | 2 | null;
  /** Both in °F. */
  readonly temperatureReadings: CorrectionReadings | null;
  /** Both in % RH. */
  readonly humidityReadings: CorrectionReadings | null;
  readonly house: HouseAfternoon | null;
  /** The coil's behaviour when wet. Without it, what the fan dries back into the house is left out, not guessed. */
  readonly coil?: WetCoil | null;
  readonly limits: LimitValues<typeof controlsLimits>;
};

/**
 * Refuses entered values outside their ranges, naming the field.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function requireControlFindingsInput(input: ControlFindingsInput): void {
  requireSettingRanges(input.settings);
  requireBoardRanges(input.board);
  if (input.selectedCapacityTons !== null) {
    requireRange("selectedCapacityTons", input.selectedCapacityTons, "tons", 0.5, 20);
  }
  requireReadings("temperatureReadings", input.temperatureReadings, "°F", 20, 130);
  requireReadings("humidityReadings", input.humidityReadings, "%", 0, 100);
  if (input.house !== null) requireHouseAfternoon(input.house);
  if (input.coil) {
    requireRange("coil.timeConstantS", input.coil.timeConstantS, "s", 1, 600);
    requireRange("coil.wetTimeS", input.coil.wetTimeS, "s", 1, 10_000);
    requireRange("coil.gamma", input.coil.gamma, "ratio", 0, 20);
  }
  for (const [key, { unit, min, max }] of Object.entries(controlsLimits)) {
    requireRange(key, input.limits[key as keyof typeof controlsLimits], unit, min, max);
  }
}

function requireReadings(
  name: string,
  readings: CorrectionReadings | null,
  unit: string,
  min: number,
  max: number,
): void {
  if (readings === null) return;
  requireRange(`${name}.trusted`, readings.trusted, unit, min, max);
  requireRange(`${name}.thermostatUncorrected`, readings.thermostatUncorrected, unit, min, max);
}

/**
 * The settings as a whole, or null while one that this equipment needs is missing.
 *
 * @param stageCount - Cooling stages, 1 or 2.
 */
export function wholeSettings(
  settings: AsEntered<ControlSettings>,
  stageCount: number,
): ControlSettings | null {
  const minutes = settings.fanBetweenCalls === "minutes per hour" ? settings.fanBetweenCallsMinPerH : null;
  if (settings.fanBetweenCalls === "minutes per hour" && minutes === null) return null;
  const second =
    settings.secondStageStartOffsetF ?? (stageCount === 1 ? settings.firstStageStartOffsetF : null);
  const stepBack = settings.stepBackToFirstStage ?? (stageCount === 1 ? false : null);
  // The corrections do not enter the timeline: it takes the thermostat to read the room rightly.
  const filled = {
    ...settings,
    secondStageStartOffsetF: second,
    stepBackToFirstStage: stepBack,
    indoorTemperatureCorrectionF: settings.indoorTemperatureCorrectionF ?? 0,
    indoorHumidityCorrectionPct: settings.indoorHumidityCorrectionPct ?? 0,
  };
  const { fanBetweenCallsMinPerH: _, ...needed } = filled;
  if (Object.values(needed).some((value) => value === null)) return null;
  return { ...(needed as Omit<ControlSettings, "fanBetweenCallsMinPerH">), fanBetweenCallsMinPerH: minutes };
}
