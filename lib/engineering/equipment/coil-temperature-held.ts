import { type MoistAir, moistAir } from "../air";
import { ImpossibleStateError } from "../errors";
import {
  type Btuh,
  btuh,
  cfm,
  type Fahrenheit,
  fahrenheit,
  type LbPerH,
  lbPerH,
  type Ratio,
  ratio,
  requireRange,
} from "../units";
import { COIL, COIL_OUTPUTS, type CoilConstants, solveCoil } from "./coil-core";
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

/** In the order of the codes of `COIL_LIMIT`. */
export const LIMITING = ["held temperature", "capacity ceiling", "minimum capacity", "frost limit"] as const;
export type LimitedBy = (typeof LIMITING)[number];

/** One steady state, in the order an installer asks for it. */
export type CoilState = {
  readonly totalBtuh: Btuh;
  readonly sensibleBtuh: Btuh;
  readonly latentBtuh: Btuh;
  /** `null` when the coil takes no heat. */
  readonly sensibleRatio: Ratio | null;
  readonly moistureLbPerH: LbPerH;
  readonly leavingDbF: Fahrenheit;
  readonly leavingDewPointF: Fahrenheit;
  readonly leavingWbF: Fahrenheit;
  readonly leaving: MoistAir;
  readonly bypassFactor: Ratio;
  /** Apparatus dew point: the coil's effective surface temperature. */
  readonly adpF: Fahrenheit;
  /** The setting. */
  readonly heldTemperatureF: Fahrenheit;
  /** What the refrigerant evaporates at; away from the setting when something else limits. */
  readonly evaporatingTemperatureF: Fahrenheit;
  readonly limitedBy: LimitedBy;
  /** True when even the minimum capacity is too much for a coil at the frost limit. */
  readonly cycling: boolean;
  /** Share of the time the compressor runs, 0 to 1; capacities are means over the cycle. */
  readonly compressorShare: Ratio;
  /** True when the surface is above the entering dew point: it cools and does not dry. */
  readonly dryCoil: boolean;
  readonly dryAirLbPerH: LbPerH;
};

/**
 * Steady state of a system whose compressor changes speed to hold an evaporating temperature, so that capacity follows airflow.
 *
 * `h_out = h_in − (1 − BF)(h_in − h_surface)`, `BF = exp(−A0/ṁ)`, surface = held temperature + approach; the surface floats up
 * to meet the capacity ceiling, and down to meet the minimum capacity but never below the frost limit.
 * Less airflow means a colder coil and a lower sensible ratio, but only down to the surface temperature at which the line from
 * the entering air is tangent to saturation; a still colder surface raises the sensible ratio again.
 * Total is the air's enthalpy drop (drain water included); latent is the water at the entering dry bulb, the convention of
 * the rated point. `airSideCapacity` leaves the drain water out and counts sensible heat at the entering humidity ratio: its
 * total is lower by `m·(t_out − 32)`, under 1 %, and its sensible higher by `0.444·m·(t_in − t_out)`, about 0.5 %.
 *
 * @param input - `entering` air 40 to 120 °F, above the frost limit; `airflowCfm` 50 to 20,000 cfm at the entering state;
 * `system` with the ranges stated at {@link CoilTemperatureHeldSystem}.
 * @returns Heat in Btu/h, water in lb/h, temperatures in °F.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @throws {@link ImpossibleStateError} for a minimum above the ceiling, or a frost limit not below the entering air.
 * @see EnergyPlus Engineering Reference for BF and A0 (published); the rest follows from the balances (physics).
 */
export function coilTemperatureHeld(input: {
  readonly entering: MoistAir;
  readonly airflowCfm: number;
  readonly system: CoilTemperatureHeldSystem;
}): CoilState {
  const { entering, system } = input;
  const constants = coilConstants(system, entering);
  const dryAirLbPerH = checkedDryAirLbPerH(input.airflowCfm, entering);
  const out = new Float64Array(COIL_OUTPUTS);
  solveCoil(
    constants,
    entering.dryBulbF,
    entering.humidityRatio,
    dryAirLbPerH,
    system.capacityCeilingBtuh,
    system.minimumCapacityBtuh,
    out,
  );
  return stateFrom(out, constants, entering, dryAirLbPerH);
}

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

/** Flow of dry air for a checked airflow counted at the entering state, lb/h. */
export function checkedDryAirLbPerH(airflowCfm: number, entering: MoistAir): number {
  requireRange("airflowCfm", airflowCfm, "cfm", 50, 20_000);
  return (cfm(airflowCfm) * 60) / entering.specificVolumeFt3PerLb;
}

/** Names the numbers of the core's output array. */
export function stateFrom(
  out: Float64Array,
  constants: CoilConstants,
  entering: MoistAir,
  dryAirLbPerH: number,
): CoilState {
  const read = (place: number): number => out[place] ?? Number.NaN;
  const totalBtuh = btuh(read(COIL.totalBtuh));
  const sensibleBtuh = btuh(read(COIL.sensibleBtuh));
  const moistureLbPerH = lbPerH(read(COIL.moistureLbPerH));
  const compressorShare = read(COIL.compressorShare);
  const leaving = leavingAir(out, entering);
  const approachF =
    constants.fixedApproachF + (constants.approachSlopeFPerBtuh * totalBtuh) / compressorShare;
  return {
    totalBtuh,
    sensibleBtuh,
    latentBtuh: btuh(totalBtuh - sensibleBtuh),
    sensibleRatio: totalBtuh > 0 ? ratio(sensibleBtuh / totalBtuh) : null,
    moistureLbPerH,
    leavingDbF: leaving.dryBulbF,
    leavingDewPointF: leaving.dewPointF,
    leavingWbF: leaving.wetBulbF,
    leaving,
    bypassFactor: ratio(read(COIL.bypassFactor)),
    adpF: fahrenheit(read(COIL.adpF)),
    heldTemperatureF: fahrenheit(constants.heldTemperatureF),
    evaporatingTemperatureF: fahrenheit(read(COIL.adpF) - approachF),
    limitedBy: LIMITING[out[COIL.limitedBy] as 0 | 1 | 2 | 3],
    cycling: compressorShare < 1,
    compressorShare: ratio(compressorShare),
    dryCoil: moistureLbPerH === 0,
    dryAirLbPerH: lbPerH(dryAirLbPerH),
  };
}

function leavingAir(out: Float64Array, entering: MoistAir): MoistAir {
  const dryBulbF = out[COIL.leavingDbF] ?? Number.NaN;
  const place = { dryBulbF, pressurePsia: entering.pressurePsia };
  // The core's saturation is within 5e-7 of psychrolib's; a fog-free saturated state is therefore stated as such.
  return out[COIL.saturatedLeaving] === 1
    ? moistAir({ ...place, relativeHumidityPct: 100 })
    : moistAir({ ...place, humidityRatio: out[COIL.leavingHumidityRatio] ?? Number.NaN });
}
