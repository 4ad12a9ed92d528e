import { airSideCapacity, type MoistAir, quickMoistureLbPerH } from "../air";
import { type LbPerH, requireRange } from "../units";
import { gallonsPerHour, pintsPerDay } from "./convert";

export type MoistureRemoval = {
  /** Exact, from the two states. Negative when the air got wetter. */
  readonly lbPerH: LbPerH;
  readonly gallonsPerHour: number;
  readonly pintsPerDay: number;
  /** The trade's 4.5 · cfm · ΔW corrected for density, to be shown beside the exact result. */
  readonly quickCheckLbPerH: LbPerH;
};

/**
 * Water a coil or dehumidifier takes from the air that crosses it.
 *
 * @param input - `airflowCfm` 0 to 100,000 cfm at the entering state; `entering` and `leaving` air at one pressure;
 * `densityRatio` of the site, 0.4 to 1.2.
 * @returns The same water in three units and the quick check.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @throws {@link ImpossibleStateError} when the two pressures differ.
 * @see Water balance (physics); 4.5 = 60 · 0.075 (computed).
 */
export function moistureRemoval(input: {
  readonly airflowCfm: number;
  readonly entering: MoistAir;
  readonly leaving: MoistAir;
  readonly densityRatio: number;
}): MoistureRemoval {
  const exact = airSideCapacity(input).moistureLbPerH;
  return {
    lbPerH: exact,
    gallonsPerHour: gallonsPerHour(exact),
    pintsPerDay: pintsPerDay(exact),
    quickCheckLbPerH: quickMoistureLbPerH({
      airflowCfm: input.airflowCfm,
      moistureDifferenceGrainsPerLb: input.entering.grainsPerLb - input.leaving.grainsPerLb,
      densityRatio: requireRange("densityRatio", input.densityRatio, "ratio", 0.4, 1.2),
    }),
  };
}
