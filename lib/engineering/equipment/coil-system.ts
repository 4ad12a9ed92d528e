import type { MoistAir } from "../air";
import { ImpossibleStateError } from "../errors";
import { cfm, requireRange } from "../units";
import type { CoilConstants } from "./coil-numbers";
import { fastSaturationHumidityRatio } from "./saturation";

/** How far the coil's surface stays above the evaporating temperature. */
export type Approach =
  | { readonly kind: "fixed"; readonly approachF: number }
  /** Zero at no capacity, `ratedApproachF` at `ratedTotalBtuh`, linear between and beyond. */
  | {
      readonly kind: "grows with capacity";
      readonly ratedApproachF: number;
      readonly ratedTotalBtuh: number;
    };

/** The settings of the equipment model: everything but the air. */
export type CoilTemperatureHeldSystem = {
  /** Coil size from `coilFromRating`, lb/h. 100 to 200,000. A larger indoor coil raises it. */
  readonly a0LbPerH: number;
  readonly approach: Approach;
  /** Evaporating temperature the compressor holds, °F. 20 to 70. A colder-coil setting lowers it. */
  readonly heldTemperatureF: number;
  /** Most the compressor gives at this outdoor temperature and capacity setting, Btu/h. 1,000 to 1,000,000. */
  readonly capacityCeilingBtuh: number;
  /** Least it gives without cycling, Btu/h. 0 to the ceiling. */
  readonly minimumCapacityBtuh: number;
  /** The coil surface is not let below this, °F. 20 to 60. */
  readonly frostLimitF: number;
};

/**
 * Checks the settings and flattens them for `solveCoil`. Build it once, then step as often as wanted.
 *
 * @param system - The settings; ranges at {@link CoilTemperatureHeldSystem}.
 * @param entering - Air the coil meets; only its dry bulb and pressure are read.
 * @returns Constants of the numeric core.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} as {@link coilTemperatureHeld}.
 * @see The checks follow from the model's equations (physics).
 */
export function coilConstants(
  system: CoilTemperatureHeldSystem,
  entering: Pick<MoistAir, "dryBulbF" | "pressurePsia">,
): CoilConstants {
  requireRange("entering.dryBulbF", entering.dryBulbF, "°F", 40, 120);
  requireRange("entering.pressurePsia", entering.pressurePsia, "psia", 6, 17);
  requireRange("a0LbPerH", system.a0LbPerH, "lb/h", 100, 200_000);
  requireRange("heldTemperatureF", system.heldTemperatureF, "°F", 20, 70);
  requireRange("capacityCeilingBtuh", system.capacityCeilingBtuh, "Btu/h", 1_000, 1e6);
  requireRange("minimumCapacityBtuh", system.minimumCapacityBtuh, "Btu/h", 0, 1e6);
  requireRange("frostLimitF", system.frostLimitF, "°F", 20, 60);
  if (system.minimumCapacityBtuh > system.capacityCeilingBtuh) {
    throw new ImpossibleStateError(
      `minimumCapacityBtuh ${system.minimumCapacityBtuh} is above capacityCeilingBtuh ${system.capacityCeilingBtuh}; check the capacity setting and both values`,
      ["minimumCapacityBtuh", "capacityCeilingBtuh"],
    );
  }
  if (system.frostLimitF >= entering.dryBulbF) {
    throw new ImpossibleStateError(
      `frostLimitF ${system.frostLimitF} °F is not below the entering air at ${entering.dryBulbF} °F; check both`,
      ["frostLimitF", "entering"],
    );
  }
  return {
    pressurePsia: entering.pressurePsia,
    a0LbPerH: system.a0LbPerH,
    heldTemperatureF: system.heldTemperatureF,
    frostLimitF: system.frostLimitF,
    frostHumidityRatio: fastSaturationHumidityRatio(system.frostLimitF, entering.pressurePsia),
    ...approachTerms(system.approach),
  };
}

function approachTerms(approach: Approach): Pick<CoilConstants, "fixedApproachF" | "approachSlopeFPerBtuh"> {
  if (approach.kind === "fixed") {
    requireRange("approachF", approach.approachF, "Δ°F", 0, 40);
    return { fixedApproachF: approach.approachF, approachSlopeFPerBtuh: 0 };
  }
  requireRange("ratedApproachF", approach.ratedApproachF, "Δ°F", 0, 40);
  requireRange("ratedTotalBtuh", approach.ratedTotalBtuh, "Btu/h", 1_000, 1e6);
  return {
    fixedApproachF: 0,
    approachSlopeFPerBtuh: approach.ratedApproachF / approach.ratedTotalBtuh,
  };
}

/**
 * Flow of dry air for a checked airflow counted at the entering state, lb/h.
 *
 * @param airflowCfm - Airflow at the entering state, cfm, 50 to 20,000.
 * @returns Dry air, lb/h.
 * @throws {@link OutOfRangeError} for an input outside its range, naming the field.
 * @see Mass = volume over specific volume (physics).
 */
export function checkedDryAirLbPerH(airflowCfm: number, entering: MoistAir): number {
  requireRange("airflowCfm", airflowCfm, "cfm", 50, 20_000);
  return (cfm(airflowCfm) * 60) / entering.specificVolumeFt3PerLb;
}
