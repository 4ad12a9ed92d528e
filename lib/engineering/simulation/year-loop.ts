/*
 * Longer than usual because it is one loop: half a million steps a year, whose variables stay in registers only inside one function.
 */

import { VAPOUR_SPECIFIC_HEAT, vapourEnthalpyBtuPerLb } from "../air/vapour-enthalpy";
import { idleFanSeconds, nextStage } from "../controls/next-stage";
import { COIL, COIL_LIMIT, coilNumbers, solveCoil, solveCoilAtCapacity } from "../equipment";
import { saturateAt, solveWetBulb } from "../equipment/coil-surface";
import { MASS_RATIO } from "../equipment/saturation";
import { ImpossibleStateError } from "../errors";
import { exp, ln } from "../exact-functions";
import { BTUH_PER_W, CONDENSING_HEAT_BTU_PER_LB } from "../moisture";
import { coilWaterAfterFan, meanStartShare } from "./coil-store";
import { lookUpCooling } from "./cooling-table";
import { HUMIDITIES, RUN_LENGTHS, STATE, SUM } from "./year-numbers";
import type { YearPlan } from "./year-plan";

/** Dry air's gas constant and 459.67 °F, ASHRAE 2017 ch. 1 eq. 26 (recalled): v = 0.370486 (t + 459.67)(1 + 1.607858 W)/p. */
const GAS = 0.370486;
/** The house is refused outside: the coil and saturation equations end there. */
const COLDEST_ROOM_F = 41;
const HOTTEST_ROOM_F = 119;

/** What the loop writes; made once by the caller. */
export type YearTotals = {
  readonly sums: Float64Array;
  /** Minutes at each whole % of relative humidity. */
  readonly humidityMinutes: Float64Array;
  /** Runs of each whole minute. */
  readonly runLengths: Float64Array;
  readonly hourF: Float64Array;
  readonly hourRhPct: Float64Array;
  /** Minutes of each hour above the limit. */
  readonly hourWetMinutes: Float64Array;
  /** Minutes of each hour the compressor ran. */
  readonly hourRunMinutes: Float64Array;
  /** Where single steps are kept; of no hours for none. */
  readonly trace: YearTrace;
};

/** Every step of some hours. */
export type YearTrace = {
  readonly firstHour: number;
  readonly hours: number;
  readonly roomF: Float64Array;
  readonly rhPct: Float64Array;
  /** 0 to 2. */
  readonly stage: Uint8Array;
  /** What the coil takes from the air but for the start of a call, Btu/h. */
  readonly capacityBtuh: Float64Array;
};

/**
 * Runs hours `from` to `to` of the plan. The rooms move by the trapezoid rule (exact to second order, stable for any step), so what
 * flows and what is stored agree to rounding. Nothing is allocated inside.
 *
 * @param plan - From `yearPlan`.
 * @param state - {@link STATE} numbers, read at the start and written at the end.
 * @param from - First hour, 0 or more.
 * @param to - Hour after the last, 0 to the plan's hours.
 * @param out - Receives sums and hours; sums are added to what is there.
 * @throws {@link ImpossibleStateError} when the rooms leave 41 to 119 °F; {@link NotConvergedError} as the coil.
 */
export function runHours(
  plan: YearPlan,
  state: Float64Array,
  from: number,
  to: number,
  out: YearTotals,
): void {
  const { house, system, controls, settings, dehumidifier, pressurePsia, stages } = plan;
  const { sums, humidityMinutes, runLengths, trace } = out;
  const stageCount = stages.length;
  const first = stages[0];
  const second = stages[1] ?? first;
  if (first === undefined || second === undefined) return;
  let airF = state[STATE.airF] ?? 0;
  let massF = state[STATE.massF] ?? 0;
  let ratio = state[STATE.humidityRatio] ?? 0;
  let bufferRatio = state[STATE.bufferRatio] ?? 0;
  let coilLb = state[STATE.coilLb] ?? 0;
  let stage = state[STATE.stage] ?? 0;
  let minutesInState = state[STATE.minutesInState] ?? 0;
  let runOnLeftS = state[STATE.runOnLeftS] ?? 0;
  let startLeft = state[STATE.startLeft] ?? 0;
  let capacityBtuh = state[STATE.capacityBtuh] ?? 0;
  let following = state[STATE.following] ?? 0;
  let dehumidifierOn = state[STATE.dehumidifierOn] ?? 0;

  const { hours, stepsPerHour, airLb, bufferLb, bufferLbPerH } = plan;
  const h = 1 / stepsPerHour;
  const stepMin = 60 / stepsPerHour;
  const stepS = 60 * stepMin;
  const startKept = exp(-stepS / system.startTimeConstantS);
  const stepOverTau = stepS / system.startTimeConstantS;
  const follow = system.settlingMin > 0 ? 1 - exp((-ln(50) * stepMin) / system.settlingMin) : 1;
  const air2 = (2 * house.airCapacitanceBtuPerF) / h;
  const mass2 = (2 * house.massCapacitanceBtuPerF) / h;
  const coupling = house.massCouplingBtuhPerF;
  const massRow = mass2 + coupling;
  const water2 = (2 * airLb) / h;
  const buffer2 = (2 * bufferLb) / h;
  const bufferRow = buffer2 + bufferLbPerH;
  const toMass = house.radiantShare;
  const coolF = controls.coolingSetpointF;
  const heatF = controls.heatingSetpointF;
  const auxiliaryMost = system.auxiliaryKw * 1_000 * BTUH_PER_W;
  const heatSlope = (system.heatPumpAt47FBtuh - system.heatPumpAt17FBtuh) / 30;
  const powerSlope = (system.wattsPerBtuhAt95F - system.wattsPerBtuhAt82F) / 13;
  const coil = coilNumbers(pressurePsia);
  const lagged = coilNumbers(pressurePsia);
  coil[COIL.atF] = airF;
  saturateAt(coil);
  let satPsia = coil[COIL.saturatedPsia] ?? 0;
  let wetBulbF = airF;

  let conduction = 0,
    outdoorAir = 0,
    sunSum = 0,
    gainSum = 0,
    fanSum = 0,
    dryerSum = 0,
    pumpSum = 0,
    auxSum = 0;
  let coilSensible = 0,
    evaporationBtu = 0,
    surfaceBtu = 0,
    insideLb = 0,
    outdoorLb = 0,
    takenLb = 0;
  let evaporatedLb = 0,
    drainedLb = 0,
    dryerLb = 0,
    surfaceLb = 0,
    compressorWh = 0,
    fanWh = 0,
    dryerWh = 0;
  let dryerH = 0,
    fanH = 0,
    firstH = 0,
    secondH = 0,
    below = 0,
    above = 0,
    starts = 0,
    frostH = 0;
  let hottest = sums[SUM.hottestF] ?? 0;
  let coldest = sums[SUM.coldestInRunF] ?? 0;

  for (let hour = from; hour < to; hour++) {
    const before = hour === 0 ? hours - 1 : hour - 1;
    const out0 = plan.outdoorF[before] ?? 0;
    const outSpan = (plan.outdoorF[hour] ?? 0) - out0;
    const ratio0 = plan.outdoorRatio[before] ?? 0;
    const ratioSpan = (plan.outdoorRatio[hour] ?? 0) - ratio0;
    const wind0 = plan.windMph[before] ?? 0;
    const windSpan = (plan.windMph[hour] ?? 0) - wind0;
    const ceiling0 = plan.ceilingBtuh[before] ?? 0;
    const ceilingSpan = (plan.ceilingBtuh[hour] ?? 0) - ceiling0;
    const sun = plan.sunBtuh[hour] ?? 0;
    const clock = hour % 24;
    const gains = plan.gainsBtuh[clock] ?? 0;
    const inside = plan.moistureLbPerH[clock] ?? 0;
    const fanCfm = (plan.ventilationHour[clock] ?? 0) * plan.ventilationCfm;
    let fanMinutes = 0;
    let wetMinutes = 0;
    let runMinutes = 0;
    let humiditySum = 0;
    const tracing = hour >= trace.firstHour && hour < trace.firstHour + trace.hours;

    for (let step = 0; step < stepsPerHour; step++) {
      const share = (step + 0.5) * h;
      const outF = out0 + outSpan * share;
      const outRatio = ratio0 + ratioSpan * share;
      const wind = wind0 + windSpan * share;

      // Thermostat.
      const humidity = (100 * pressurePsia * ratio) / ((MASS_RATIO + ratio) * satPsia);
      const past = humidity > controls.dryAbovePct ? settings.coolingPastSetpointF : 0;
      let next: number = nextStage(stage, minutesInState, airF - coolF, past, settings, stageCount);
      if (outF < system.noCoolingBelowF) next = 0;
      if (next !== stage) {
        if (stage === 0) {
          starts++;
          startLeft = 1;
          following = 0;
          minutesInState = 0;
        } else if (next === 0) {
          const length = Math.min(RUN_LENGTHS - 1, Math.round(minutesInState));
          runLengths[length] = (runLengths[length] ?? 0) + 1;
          runOnLeftS = settings.fanRunOnAfterCoolingS;
          minutesInState = 0;
        } else following = system.settlingMin > 0 ? 1 : 0;
        stage = next;
      }
      minutesInState += stepMin;

      // Coil: heat out of the air, water onto the coil; or water off the coil while the fan blows.
      let coolingBtuh = 0;
      let taken = 0;
      let evaporated = 0;
      let fanW = 0;
      if (stage > 0) {
        const set = stage === 1 ? first : second;
        coil[COIL.enteringDbF] = airF;
        coil[COIL.enteringHumidityRatio] = ratio;
        if (set.table === null) {
          const ceiling = (ceiling0 + ceilingSpan * share) * set.share;
          coil[COIL.ceilingBtuh] = ceiling;
          coil[COIL.minimumBtuh] = Math.min(set.minimumBtuh, ceiling);
          solveCoil(set.coil, coil);
        } else {
          coil[COIL.outdoorDbF] = outF;
          coil[COIL.solvedF] = wetBulbF;
          solveWetBulb(coil);
          wetBulbF = coil[COIL.solvedF] ?? 0;
          lookUpCooling(set.table, coil);
        }
        const steady = coil[COIL.totalBtuh] ?? 0;
        let now = coil;
        if (following === 1 && set.table === null) {
          capacityBtuh += (steady - capacityBtuh) * follow;
          if (Math.abs(capacityBtuh - steady) < 0.001 * steady) following = 0;
          else {
            lagged[COIL.enteringDbF] = airF;
            lagged[COIL.enteringHumidityRatio] = ratio;
            lagged[COIL.ceilingBtuh] = capacityBtuh;
            if (!solveCoilAtCapacity(set.coil, lagged)) solveCoil(set.atFrost, lagged);
            now = lagged;
          }
        } else capacityBtuh = steady;
        let part = 1;
        if (startLeft > 1e-6) {
          const left = startLeft * startKept;
          part = meanStartShare(startLeft, left, stepOverTau);
          startLeft = left;
        }
        coolingBtuh = (now[COIL.sensibleBtuh] ?? 0) * part;
        taken = (now[COIL.moistureLbPerH] ?? 0) * part;
        if (coil[COIL.limitedBy] === COIL_LIMIT.frost) frostH += h;
        coilLb += taken * h;
        if (coilLb > system.coilHoldsLb) {
          drainedLb += coilLb - system.coilHoldsLb;
          coilLb = system.coilHoldsLb;
        }
        fanW = set.fanW;
        fanH += h;
        fanMinutes += stepMin;
        runMinutes += stepMin;
        if (stage === 1) firstH += h;
        else secondH += h;
        compressorWh +=
          (now[COIL.totalBtuh] ?? 0) *
          h *
          (system.wattsPerBtuhAt82F + powerSlope * (Math.max(outF, 67) - 82));
        if (airF < coolF) below += (coolF - airF) * h;
        if (airF < coldest) coldest = airF;
      } else {
        const idleS = idleFanSeconds(settings, runOnLeftS, step * stepMin, fanMinutes, stepS);
        runOnLeftS = runOnLeftS > stepS ? runOnLeftS - stepS : 0;
        if (idleS > 0) {
          const idle = idleS / stepS;
          fanW = first.fanW * idle;
          fanH += h * idle;
          fanMinutes += stepMin * idle;
          if (coilLb > 0) {
            coil[COIL.enteringDbF] = airF;
            coil[COIL.enteringHumidityRatio] = ratio;
            coil[COIL.solvedF] = wetBulbF;
            solveWetBulb(coil);
            wetBulbF = coil[COIL.solvedF] ?? 0;
            coil[COIL.atF] = wetBulbF;
            saturateAt(coil);
            const deficit = (coil[COIL.saturatedRatio] ?? 0) - ratio;
            const firstRate = (system.firstEvaporationLbPerH * Math.max(0, deficit)) / plan.referenceDeficit;
            const left = coilWaterAfterFan(coilLb, system.coilHoldsLb, firstRate, h * idle);
            evaporated = (coilLb - left) / h;
            coilLb = left;
          }
        }
      }

      // Dehumidifier.
      let dried = 0;
      let dryerW = 0;
      if (dehumidifier !== null) {
        if (humidity > dehumidifier.startAbovePct) dehumidifierOn = 1;
        else if (humidity < dehumidifier.stopBelowPct) dehumidifierOn = 0;
        if (dehumidifierOn === 1) {
          dried = plan.dehumidifierLbPerHPerRatio * ratio;
          dryerW = dehumidifier.powerW;
          dryerH += h;
        }
      }

      // Outdoor air.
      const leakCfm = Math.sqrt(
        plan.stackCfm2PerF * Math.abs(airF - outF) + plan.windCfm2PerMph2 * wind * wind,
      );
      const outCfm = leakCfm + (outRatio > plan.pauseAboveRatio ? 0 : fanCfm);
      const outLbPerH = (outCfm * 60 * pressurePsia) / (GAS * (outF + 459.67) * (1 + 1.607858 * outRatio));
      const outHeat = outLbPerH * (0.24 + VAPOUR_SPECIFIC_HEAT * outRatio);

      // Rooms.
      const vapour = vapourEnthalpyBtuPerLb(airF);
      const evaporationHeat = evaporated * vapour;
      const dryerHeat = dryerW * BTUH_PER_W + dried * CONDENSING_HEAT_BTU_PER_LB;
      const fanHeat = fanW * BTUH_PER_W;
      const radiant = (sun + gains) * toMass;
      const toAir = sun + gains - radiant + fanHeat + dryerHeat - coolingBtuh - evaporationHeat;
      const conductance = house.conductanceBtuhPerF + outHeat;
      const determinant = (air2 + conductance + coupling) * massRow - coupling * coupling;
      const airRight = air2 * airF + toAir + conductance * outF;
      const massRight = mass2 * massF + radiant;
      let meanF = (airRight * massRow + coupling * massRight) / determinant;
      if (2 * meanF - airF < heatF) {
        const wanted = (((heatF + airF) / 2 - meanF) * determinant) / massRow;
        const pump = Math.max(0, Math.min(wanted, system.heatPumpAt17FBtuh + heatSlope * (outF - 17)));
        const auxiliary = Math.min(wanted - pump, auxiliaryMost);
        meanF += ((pump + auxiliary) * massRow) / determinant;
        pumpSum += pump * h;
        auxSum += auxiliary * h;
      }
      const meanMassF = (massRight + coupling * meanF) / massRow;
      const airBefore = airF;
      airF = 2 * meanF - airF;
      massF = 2 * meanMassF - massF;

      // Water in the air and in the buffer.
      const source = inside + evaporated - taken - dried;
      const waterRow = water2 + outLbPerH + bufferLbPerH;
      const meanRatio =
        ((water2 * ratio + source + outLbPerH * outRatio) * bufferRow +
          bufferLbPerH * buffer2 * bufferRatio) /
        (waterRow * bufferRow - bufferLbPerH * bufferLbPerH);
      const meanBuffer = (buffer2 * bufferRatio + bufferLbPerH * meanRatio) / bufferRow;
      ratio = 2 * meanRatio - ratio;
      bufferRatio = 2 * meanBuffer - bufferRatio;

      coil[COIL.atF] = airF;
      saturateAt(coil);
      satPsia = coil[COIL.saturatedPsia] ?? 0;
      const most = coil[COIL.saturatedRatio] ?? 0;
      if (ratio > most) {
        // More water than the air can hold falls out on cold surfaces and warms them.
        const fallen = airLb * (ratio - most);
        ratio = most;
        surfaceLb += fallen;
        surfaceBtu += fallen * CONDENSING_HEAT_BTU_PER_LB;
        airF += (fallen * CONDENSING_HEAT_BTU_PER_LB) / house.airCapacitanceBtuPerF;
        coil[COIL.atF] = airF;
        saturateAt(coil);
        satPsia = coil[COIL.saturatedPsia] ?? 0;
      }

      // Accounts.
      conduction += house.conductanceBtuhPerF * (outF - meanF) * h;
      outdoorAir += outHeat * (outF - meanF) * h;
      sunSum += sun * h;
      gainSum += gains * h;
      fanSum += fanHeat * h;
      dryerSum += dryerHeat * h;
      coilSensible += coolingBtuh * h;
      evaporationBtu += evaporationHeat * h;
      insideLb += inside * h;
      outdoorLb += outLbPerH * (outRatio - meanRatio) * h;
      takenLb += taken * h;
      evaporatedLb += evaporated * h;
      dryerLb += dried * h;
      fanWh += fanW * h;
      dryerWh += dryerW * h;
      const rh = (100 * pressurePsia * ratio) / ((MASS_RATIO + ratio) * satPsia);
      humiditySum += rh;
      const bin = Math.min(HUMIDITIES - 1, Math.floor(rh));
      humidityMinutes[bin] = (humidityMinutes[bin] ?? 0) + stepMin;
      if (rh > plan.humidityLimitPct) wetMinutes += stepMin;
      if (airF > hottest) hottest = airF;
      if (tracing) {
        const place = (hour - trace.firstHour) * stepsPerHour + step;
        trace.roomF[place] = airF;
        trace.rhPct[place] = rh;
        trace.stage[place] = stage;
        trace.capacityBtuh[place] = stage > 0 ? capacityBtuh : 0;
      }
      const over = airBefore - coolF - settings.firstStageStartOffsetF;
      if (over > 0) above += over * h;
    }
    if (!(airF > COLDEST_ROOM_F && airF < HOTTEST_ROOM_F && ratio > 0)) {
      throw new ImpossibleStateError(
        `In hour ${hour + 1} the rooms stand at ${airF.toFixed(1)} °F, outside 41 to 119 °F; check heating capacity, auxiliary heat and the house.`,
        ["house", "system"],
      );
    }
    out.hourF[hour] = airF;
    out.hourRhPct[hour] = humiditySum * h;
    out.hourWetMinutes[hour] = wetMinutes;
    out.hourRunMinutes[hour] = runMinutes;
  }

  const added = [
    [SUM.conductionBtu, conduction],
    [SUM.outdoorAirBtu, outdoorAir],
    [SUM.sunBtu, sunSum],
    [SUM.gainsBtu, gainSum],
    [SUM.fanBtu, fanSum],
    [SUM.dehumidifierBtu, dryerSum],
    [SUM.heatPumpBtu, pumpSum],
    [SUM.auxiliaryBtu, auxSum],
    [SUM.coilSensibleBtu, coilSensible],
    [SUM.coilEvaporationBtu, evaporationBtu],
    [SUM.surfaceBtu, surfaceBtu],
    [SUM.insideLb, insideLb],
    [SUM.outdoorAirLb, outdoorLb],
    [SUM.coilLb, takenLb],
    [SUM.evaporatedLb, evaporatedLb],
    [SUM.drainedLb, drainedLb],
    [SUM.dehumidifierLb, dryerLb],
    [SUM.surfaceLb, surfaceLb],
    [SUM.compressorWh, compressorWh],
    [SUM.fanWh, fanWh],
    [SUM.dehumidifierWh, dryerWh],
    [SUM.dehumidifierH, dryerH],
    [SUM.fanH, fanH],
    [SUM.firstStageH, firstH],
    [SUM.secondStageH, secondH],
    [SUM.belowSetpointDegreeH, below],
    [SUM.aboveSetpointDegreeH, above],
    [SUM.starts, starts],
    [SUM.frostH, frostH],
  ] as const;
  for (const [place, value] of added) sums[place] = (sums[place] ?? 0) + value;
  sums[SUM.hottestF] = hottest;
  sums[SUM.coldestInRunF] = coldest;
  state.set([
    airF,
    massF,
    ratio,
    bufferRatio,
    coilLb,
    stage,
    minutesInState,
    runOnLeftS,
    startLeft,
    capacityBtuh,
    following,
    dehumidifierOn,
  ]);
}
