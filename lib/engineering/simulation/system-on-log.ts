import { vapourEnthalpyBtuPerLb } from "../air/vapour-enthalpy";
import { COIL, capacityCeilingBtuh, coilNumbers, solveCoil } from "../equipment";
import { solveWetBulb } from "../equipment/coil-surface";
import { fastSaturationHumidityRatio, fastSaturationPressurePsia, MASS_RATIO } from "../equipment/saturation";
import { exp } from "../exact-functions";
import { BTUH_PER_W, CONDENSING_HEAT_BTU_PER_LB } from "../moisture";
import { coilWaterAfterFan } from "./coil-store";
import { lookUpCooling } from "./cooling-table";
import type { StagePlan } from "./stage-plan";
import { isHeldCoil } from "./system";
import type { YearPlan } from "./year-plan";

const S_PER_H = 3_600;

/** How a system was run, one element a sample. Shares are parts of the sample, 0 to 1. */
export type SystemRun = {
  /** Minutes a sample stands for, 1 to 60. */
  readonly intervalMin: number;
  /** 1 where a sample does not follow the one before it. */
  readonly startsAnew: Uint8Array;
  /** 45 to 115 °F. */
  readonly indoorF: Float64Array;
  /** lb/lb, 0 to saturation. */
  readonly indoorRatio: Float64Array;
  /** −60 to 140 °F, not above the hottest the equipment is known at. */
  readonly outdoorF: Float64Array;
  /** Any stage on. */
  readonly coolingShare: Float64Array;
  /** Second stage on, part of `coolingShare`. */
  readonly secondShare: Float64Array;
  readonly fanShare: Float64Array;
  readonly auxiliaryShare: Float64Array;
};

/** What the system did to the rooms, mean over each sample. */
export type SystemEffect = {
  /** Sensible heat taken out; negative where fan, auxiliary heat or a dehumidifier put more in, Btu/h. */
  readonly cooledBtuh: Float64Array;
  /** Water taken out; negative where more dried back off the coil, lb/h. */
  readonly driedLbPerH: Float64Array;
};

/**
 * What this system did to the rooms, told from how long each stage ran and the air it met: the coil of the year's loop at the measured
 * state, its start, the water that dries back off it, fan heat, auxiliary heat, and a dehumidifier that follows the measured humidity.
 * The lag after a stage change is left out: within the samples of a log it moves heat by minutes only.
 *
 * @param plan - From `yearPlan`.
 * @param run - Columns of one length; ranges at {@link SystemRun}.
 * @returns Btu/h and lb/h, one element a sample.
 * @throws {@link OutOfRangeError} for an outdoor temperature the equipment is not known at; {@link NotConvergedError} as the coil.
 * @see Balances at `simulateYear` (physics).
 */
export function systemOnLog(plan: YearPlan, run: SystemRun): SystemEffect {
  const { system, dehumidifier, pressurePsia } = plan;
  const { length } = run.indoorF;
  const cooledBtuh = new Float64Array(length);
  const driedLbPerH = new Float64Array(length);
  const h = run.intervalMin / 60;
  const [first, second = first] = plan.stages;
  if (first === undefined || second === undefined) return { cooledBtuh, driedLbPerH };
  const startH = system.startTimeConstantS / S_PER_H;
  const coils = [coilNumbers(pressurePsia), coilNumbers(pressurePsia)] as const;
  const idleAir = coilNumbers(pressurePsia);
  let coilLb = 0;
  let before = 0;
  let dryerOn = false;
  for (let index = 0; index < length; index++) {
    const at = (column: Float64Array): number => column[index] ?? 0;
    if (run.startsAnew[index] === 1) {
      coilLb = 0;
      before = 0;
      dryerOn = false;
    }
    const airF = at(run.indoorF);
    const ratio = at(run.indoorRatio);
    const on = at(run.coolingShare);
    const high = Math.min(on, at(run.secondShare));
    let sensible = 0;
    let taken = 0;
    let fanW = 0;
    for (const [place, stage] of [first, second].entries()) {
      const share = place === 0 ? on - high : high;
      if (share <= 0) continue;
      const coil = coils[place === 0 ? 0 : 1];
      solveStage(plan, stage, at(run.outdoorF), airF, ratio, coil);
      sensible += share * (coil[COIL.sensibleBtuh] ?? 0);
      taken += share * (coil[COIL.moistureLbPerH] ?? 0);
      fanW += share * stage.fanW;
    }
    // Two part-run samples in a row are two runs; a full one goes on from the one before.
    const starts = on > 0 && (before === 0 || (before < 1 && on < 1));
    const part = starts ? 1 - (startH / (on * h)) * (1 - exp((-on * h) / startH)) : 1;
    sensible *= part;
    taken *= part;
    before = on;
    coilLb = Math.min(system.coilHoldsLb, coilLb + taken * h);
    const idle = Math.max(0, at(run.fanShare) - on);
    fanW += idle * first.fanW;
    let evaporated = 0;
    if (idle > 0 && coilLb > 0) {
      idleAir[COIL.enteringDbF] = airF;
      idleAir[COIL.enteringHumidityRatio] = ratio;
      idleAir[COIL.solvedF] = airF;
      solveWetBulb(idleAir);
      const deficit = fastSaturationHumidityRatio(idleAir[COIL.solvedF] ?? 0, pressurePsia) - ratio;
      const rate = (system.firstEvaporationLbPerH * Math.max(0, deficit)) / plan.referenceDeficit;
      const left = coilWaterAfterFan(coilLb, system.coilHoldsLb, rate, h * idle);
      evaporated = (coilLb - left) / h;
      coilLb = left;
    }
    let dried = 0;
    let dryerHeat = 0;
    if (dehumidifier !== null) {
      const humidity =
        (100 * pressurePsia * ratio) / ((MASS_RATIO + ratio) * fastSaturationPressurePsia(airF));
      if (humidity > dehumidifier.startAbovePct) dryerOn = true;
      else if (humidity < dehumidifier.stopBelowPct) dryerOn = false;
      dried = dryerOn ? plan.dehumidifierLbPerHPerRatio * ratio : 0;
      dryerHeat = dryerOn ? dehumidifier.powerW * BTUH_PER_W + dried * CONDENSING_HEAT_BTU_PER_LB : 0;
    }
    const heating = at(run.auxiliaryShare) * system.auxiliaryKw * 1_000 * BTUH_PER_W;
    cooledBtuh[index] =
      sensible + evaporated * vapourEnthalpyBtuPerLb(airF) - fanW * BTUH_PER_W - dryerHeat - heating;
    driedLbPerH[index] = taken + dried - evaporated;
  }
  return { cooledBtuh, driedLbPerH };
}

function solveStage(
  plan: YearPlan,
  stage: StagePlan,
  outdoorF: number,
  airF: number,
  ratio: number,
  out: Float64Array,
): void {
  const { system } = plan;
  out[COIL.enteringDbF] = airF;
  out[COIL.enteringHumidityRatio] = ratio;
  if (stage.table !== null) {
    out[COIL.outdoorDbF] = outdoorF;
    out[COIL.solvedF] = airF;
    solveWetBulb(out);
    lookUpCooling(stage.table, out);
    return;
  }
  if (!isHeldCoil(system)) return;
  const coolest = system.ceiling[0]?.outdoorDbF ?? outdoorF;
  const ceiling = capacityCeilingBtuh(system.ceiling, Math.max(outdoorF, coolest), 100) * stage.share;
  out[COIL.ceilingBtuh] = ceiling;
  out[COIL.minimumBtuh] = Math.min(stage.minimumBtuh, ceiling);
  solveCoil(stage.coil, out);
}
