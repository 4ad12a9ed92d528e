import type { MoistAir } from "../air";
import { type LbPerH, lbPerH, requireRange } from "../units";
import { pintsPerDay } from "./convert";
import {
  type HouseholdMoisture,
  householdMoistureLbPerH,
  outdoorAirMoistureLbPerH,
} from "./moisture-sources";

/** One condition at which the house's water is added up. */
export type MoistureCondition = {
  readonly outdoor: MoistAir;
  /** The indoor air the job aims at. */
  readonly indoor: MoistAir;
  /** Ventilation and leakage together at this condition, cfm at the outdoor state. 0 to 100,000. */
  readonly outdoorAirCfm: number;
  readonly household: HouseholdMoisture;
  /** Water the cooling takes, mean over the hours, lb/h. Zero without a cooling call. 0 to 1,000. */
  readonly coolingRemovalLbPerH: number;
  /** Water a dehumidifier takes at the indoor condition, lb/h. 0 to 1,000. */
  readonly dehumidifierLbPerH: number;
};

export type MoistureBalance = {
  readonly householdLbPerH: LbPerH;
  readonly outdoorAirLbPerH: LbPerH;
  readonly removalLbPerH: LbPerH;
  /** In minus out: above zero the house gets wetter than the indoor air aimed at. */
  readonly netLbPerH: LbPerH;
  /** Dehumidifier capacity still missing at the indoor condition, pint/day; zero when none is. */
  readonly missingPintsPerDay: number;
};

/**
 * Water in minus water out at one condition.
 *
 * @param condition - Ranges at {@link MoistureCondition}.
 * @returns lb/h each way; `missingPintsPerDay` at the house's condition, not the rating condition.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see Water balance (physics).
 */
export function moistureBalance(condition: MoistureCondition): MoistureBalance {
  const householdLbPerH = householdMoistureLbPerH(condition.household);
  const outdoorAirLbPerH = outdoorAirMoistureLbPerH(condition);
  const removal =
    requireRange("coolingRemovalLbPerH", condition.coolingRemovalLbPerH, "lb/h", 0, 1_000) +
    requireRange("dehumidifierLbPerH", condition.dehumidifierLbPerH, "lb/h", 0, 1_000);
  const net = householdLbPerH + outdoorAirLbPerH - removal;
  return {
    householdLbPerH,
    outdoorAirLbPerH,
    removalLbPerH: lbPerH(removal),
    netLbPerH: lbPerH(net),
    missingPintsPerDay: pintsPerDay(Math.max(0, net)),
  };
}

/**
 * Dehumidifier capacity needed in mild, wet weather: the dew-point design condition without any cooling call.
 *
 * @param condition - As {@link MoistureCondition} without the two removals, at the dew-point design condition.
 * @returns The balance; its `missingPintsPerDay` is the capacity to look for in the maker's data at the indoor condition.
 * @throws {@link OutOfRangeError} as {@link moistureBalance}.
 * @see Water balance (physics).
 */
export function supplementalNeed(
  condition: Omit<MoistureCondition, "coolingRemovalLbPerH" | "dehumidifierLbPerH">,
): MoistureBalance {
  return moistureBalance({ ...condition, coolingRemovalLbPerH: 0, dehumidifierLbPerH: 0 });
}
