import type { MoistAir } from "../air";
import { cfm, type LbPerH, lbPerH, requireRange } from "../units";
import { LB_PER_PINT } from "./convert";

/**
 * Water from household sources, as published, in pints: per person and hour, per shower of 5 minutes, per dinner for four,
 * per wash-up by hand after it. To be offered as suggestions, never filled in silently.
 *
 * @see Moisture Sources Associated with Potential Damage in Cold Climate Housing, 1988, as listed by a public extension
 * table (published): respiration and perspiration of a family of four 0.44 pint/h; shower 0.5; dinner 1.2; dishes 0.68; ground 0 to
 * 105 pint/day.
 */
export const PUBLISHED_SOURCES = {
  personPintsPerHour: 0.44 / 4,
  showerPints: 0.5,
  dinnerForFourPints: 1.2,
  dishesByHandPints: 0.68,
  groundPintsPerDay: { min: 0, max: 105 },
} as const;

export type HouseholdMoisture = {
  /** People at home, mean over the time looked at. 0 to 100. */
  readonly people: number;
  /** Water one person gives off, lb/h. 0 to 2. */
  readonly personLbPerH: number;
  /** Cooking, bathing, washing, plants: pints that stay in the house a day. 0 to 500. */
  readonly householdPintsPerDay: number;
  /** Water from damp ground or a wet crawlspace, pints a day. 0 to 1,000. */
  readonly groundPintsPerDay: number;
};

/**
 * Water given off inside the house.
 *
 * @param sources - Ranges at {@link HouseholdMoisture}.
 * @returns lb/h, mean over the day.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see Sum of the sources (physics).
 */
export function householdMoistureLbPerH(sources: HouseholdMoisture): LbPerH {
  const people = requireRange("people", sources.people, "", 0, 100);
  const each = requireRange("personLbPerH", sources.personLbPerH, "lb/h", 0, 2);
  const household = requireRange("householdPintsPerDay", sources.householdPintsPerDay, "pint/day", 0, 500);
  const ground = requireRange("groundPintsPerDay", sources.groundPintsPerDay, "pint/day", 0, 1_000);
  return lbPerH(people * each + ((household + ground) * LB_PER_PINT) / 24);
}

/**
 * Water that outdoor air brings in, by ventilation and leakage together. Negative when it dries the house.
 *
 * @param input - `outdoorAirCfm` 0 to 100,000 cfm counted at the outdoor state; `outdoor` and `indoor` air.
 * @returns lb/h.
 * @throws {@link OutOfRangeError} for an airflow outside its range.
 * @see Mass balance of water on dry air (physics).
 */
export function outdoorAirMoistureLbPerH(input: {
  readonly outdoorAirCfm: number;
  readonly outdoor: MoistAir;
  readonly indoor: MoistAir;
}): LbPerH {
  const dryAir = (cfm(input.outdoorAirCfm) * 60) / input.outdoor.specificVolumeFt3PerLb;
  return lbPerH(dryAir * (input.outdoor.humidityRatio - input.indoor.humidityRatio));
}
