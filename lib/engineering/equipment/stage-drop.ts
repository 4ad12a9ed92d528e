import type { MoistAir } from "../air";
import { ImpossibleStateError } from "../errors";
import { exp, ln } from "../exact-functions";
import {
  type Btuh,
  btuh,
  type Fahrenheit,
  fahrenheit,
  type LbPerH,
  lbPerH,
  type Pounds,
  pounds,
  type Ratio,
  ratio,
  requireRange,
} from "../units";
import { coilAtFlow, solveCoil, solveCoilAtCapacity } from "./coil-core";
import { COIL, coilNumbers } from "./coil-numbers";
import { type CoilState, stateFrom } from "./coil-state";
import { type CoilTemperatureHeldSystem, checkedDryAirLbPerH, coilConstants } from "./coil-system";

/** How compressor capacity comes down after the airflow dropped. */
export type SettlingShape = "first-order" | "ramp";

export type TransientMinute = {
  readonly minute: number;
  readonly totalBtuh: Btuh;
  readonly sensibleRatio: Ratio;
  readonly moistureLbPerH: LbPerH;
  /** Water per 1,000 Btu of total capacity, lb. */
  readonly moistureLbPer1000Btu: number;
  readonly adpF: Fahrenheit;
  readonly leavingDbF: Fahrenheit;
  /** True while the frost limit, not the compressor, holds capacity. */
  readonly atFrostLimit: boolean;
};

export type StageDrop = {
  readonly before: CoilState;
  readonly after: CoilState;
  readonly minutes: readonly TransientMinute[];
  /** Water removed beyond what the settled low stage would have removed in the same minutes, lb. */
  readonly extraMoistureLb: Pounds;
};

/** "Settled" in a first-order fall: 2 % of the step is left. exp(−ln 50) = 0.02. */
const SETTLED = ln(50);

/**
 * Minute by minute after the airflow of a coil-temperature-held system steps down while the air entering stays the same.
 *
 * The fan follows at once, the compressor only over the settling time: until then more capacity meets less air, so the coil
 * is colder than before the drop and colder than it will be, and takes more water per Btu.
 *
 * @param input - `entering` and `system` as `coilTemperatureHeld`; `airflowBeforeCfm`, `airflowAfterCfm` 50 to 20,000 cfm, not
 * rising; `settlingMinutes` 1 to 120, when 2 % of the step is left (first-order) or none (ramp); `minutes` to show, 1 to 240.
 * @returns Both steady states and one entry a minute from 0.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} as `coilTemperatureHeld`; also when airflow rises, or when a steady
 * state cycles, so that it has no steady capacity to settle to.
 * @see Balances as `coilTemperatureHeld` (physics); settling time of 15 to 16 minutes: common practice, no source.
 */
export function stageDropTransient(input: {
  readonly entering: MoistAir;
  readonly system: CoilTemperatureHeldSystem;
  readonly airflowBeforeCfm: number;
  readonly airflowAfterCfm: number;
  readonly settlingMinutes: number;
  readonly shape: SettlingShape;
  readonly minutes: number;
}): StageDrop {
  const { entering, system } = input;
  const settling = requireRange("settlingMinutes", input.settlingMinutes, "min", 1, 120);
  const lastMinute = Math.floor(requireRange("minutes", input.minutes, "min", 1, 240));
  const constants = coilConstants(system, entering);
  const flowBefore = checkedDryAirLbPerH(input.airflowBeforeCfm, entering);
  const flowAfter = checkedDryAirLbPerH(input.airflowAfterCfm, entering);
  if (flowAfter > flowBefore) {
    throw new ImpossibleStateError(
      "airflowAfterCfm is above airflowBeforeCfm; this follows a drop of the airflow",
      ["airflowBeforeCfm", "airflowAfterCfm"],
    );
  }

  const out = coilNumbers(entering.pressurePsia);
  out[COIL.enteringDbF] = entering.dryBulbF;
  out[COIL.enteringHumidityRatio] = entering.humidityRatio;
  const steady = (flow: number): CoilState => {
    out[COIL.ceilingBtuh] = system.capacityCeilingBtuh;
    out[COIL.minimumBtuh] = system.minimumCapacityBtuh;
    solveCoil(coilAtFlow(constants, flow), out);
    return stateFrom(out, constants, entering, flow);
  };
  const before = steady(flowBefore);
  const after = steady(flowAfter);
  if (before.cycling || after.cycling || before.totalBtuh <= 0 || after.totalBtuh <= 0) {
    throw new ImpossibleStateError(
      "The system does not run steadily at one of the airflows; raise the airflow or lower minimumCapacityBtuh",
      ["airflowBeforeCfm", "airflowAfterCfm", "minimumCapacityBtuh"],
    );
  }

  // What the coil takes at the frost limit, to which capacity falls back when the compressor would pull it lower.
  const settledCoil = coilAtFlow(constants, flowAfter);
  const atFrost = {
    ...settledCoil,
    heldTemperatureF: constants.frostLimitF,
    fixedApproachF: 0,
    approachSlopeFPerBtuh: 0,
  };
  const minutes: TransientMinute[] = [];
  let extraMoistureLb = 0;
  for (let minute = 0; minute <= lastMinute; minute += 1) {
    const left =
      input.shape === "ramp" ? Math.max(0, 1 - minute / settling) : exp((-SETTLED * minute) / settling);
    const wanted = after.totalBtuh + (before.totalBtuh - after.totalBtuh) * left;
    out[COIL.ceilingBtuh] = wanted;
    out[COIL.minimumBtuh] = 0;
    const atFrostLimit = !solveCoilAtCapacity(settledCoil, out);
    if (atFrostLimit) solveCoil(atFrost, out);
    const entry = minuteFrom(out, minute, atFrostLimit);
    const previous = minutes.at(-1);
    if (previous !== undefined) {
      const mean = (previous.moistureLbPerH + entry.moistureLbPerH) / 2;
      extraMoistureLb += (mean - after.moistureLbPerH) / 60;
    }
    minutes.push(entry);
  }
  return { before, after, minutes, extraMoistureLb: pounds(extraMoistureLb) };
}

function minuteFrom(out: Float64Array, minute: number, atFrostLimit: boolean): TransientMinute {
  const read = (place: number): number => out[place] ?? Number.NaN;
  const total = read(COIL.totalBtuh);
  const moisture = read(COIL.moistureLbPerH);
  return {
    minute,
    totalBtuh: btuh(total),
    sensibleRatio: ratio(read(COIL.sensibleBtuh) / total),
    moistureLbPerH: lbPerH(moisture),
    moistureLbPer1000Btu: (moisture / total) * 1_000,
    adpF: fahrenheit(read(COIL.adpF)),
    leavingDbF: fahrenheit(read(COIL.leavingDbF)),
    atFrostLimit,
  };
}
