import type { LimitValues } from "../limit-definition";
import { type Btuh, btuh, requireRange } from "../units";
import type { equipmentLimits } from "./limits";

export type EquipmentKind = "single speed" | "two-stage" | "variable speed";
/** The equipment limits in force. */
export type EquipmentLimitValues = LimitValues<typeof equipmentLimits>;

/** Loads and capacities at the design condition, Btu/h. Capacities come from the maker's data at that condition. */
export type CoolingMatch = {
  readonly sensibleLoadBtuh: number;
  readonly latentLoadBtuh: number;
  readonly totalCapacityBtuh: number;
  readonly sensibleCapacityBtuh: number;
};

export type CoolingRatios = {
  readonly adjustedSensibleBtuh: Btuh;
  readonly adjustedLatentBtuh: Btuh;
  readonly totalRatio: number;
  readonly sensibleRatio: number;
  /** `null` without a latent load worth the name (under 1 Btu/h). */
  readonly latentRatio: number | null;
};

/**
 * Capacity over load, after the half-excess-latent rule: half of the latent capacity beyond the latent load counts as sensible.
 *
 * @param match - `sensibleLoadBtuh` 500 to 1,000,000; `latentLoadBtuh` 0 to 500,000; `totalCapacityBtuh` 500 to 1,000,000;
 * `sensibleCapacityBtuh` 0 to the total.
 * @returns Adjusted capacities, Btu/h, and ratios to load.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see ANSI/ACCA 3 Manual S-2014, excess latent capacity (recalled; arithmetic computed).
 */
export function coolingRatios(match: CoolingMatch): CoolingRatios {
  const sensibleLoad = requireRange("sensibleLoadBtuh", match.sensibleLoadBtuh, "Btu/h", 500, 1e6);
  const latentLoad = requireRange("latentLoadBtuh", match.latentLoadBtuh, "Btu/h", 0, 5e5);
  const total = requireRange("totalCapacityBtuh", match.totalCapacityBtuh, "Btu/h", 500, 1e6);
  const sensible = requireRange("sensibleCapacityBtuh", match.sensibleCapacityBtuh, "Btu/h", 0, total);
  const halfExcess = Math.max(0, total - sensible - latentLoad) / 2;
  const adjustedSensible = sensible + halfExcess;
  const adjustedLatent = total - adjustedSensible;
  return {
    adjustedSensibleBtuh: btuh(adjustedSensible),
    adjustedLatentBtuh: btuh(adjustedLatent),
    totalRatio: total / (sensibleLoad + latentLoad),
    sensibleRatio: adjustedSensible / sensibleLoad,
    latentRatio: latentLoad >= 1 ? adjustedLatent / latentLoad : null,
  };
}

/**
 * Most total capacity over load for the kind of equipment.
 *
 * @returns Ratio.
 */
export function totalMaxRatio(kind: EquipmentKind, limits: EquipmentLimitValues): number {
  if (kind === "single speed") return limits["equipment.totalMaxRatioSingleSpeed"];
  if (kind === "two-stage") return limits["equipment.totalMaxRatioTwoStage"];
  return limits["equipment.totalMaxRatioVariableSpeed"];
}
