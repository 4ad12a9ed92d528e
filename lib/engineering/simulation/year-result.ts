import { LB_PER_PINT } from "../moisture";
import type { Weather } from "../weather";
import type { YearTotals, YearTrace } from "./year-loop";
import { STATE, SUM } from "./year-numbers";
import type { YearPlan } from "./year-plan";

/** In, out and stored; `residual` is what they leave over, `relative` that over all that moved. */
export type Balance = {
  readonly in: number;
  readonly out: number;
  readonly stored: number;
  readonly residual: number;
  readonly relative: number;
};

export type YearResult = {
  /** Hours at or below the humidity limit. */
  readonly dryHours: number;
  readonly hoursAboveLimit: number;
  /** January first. */
  readonly hoursAboveLimitByMonth: readonly number[];
  /** Hours the compressor runs, January first. */
  readonly coolingHoursByMonth: readonly number[];
  /** Mean humidity of the rooms, January first; `null` in a month the weather leaves out. */
  readonly meanRhPctByMonth: readonly (number | null)[];
  /** The seven days with most hours above the limit; `null` for weather shorter than that or a year without any. */
  readonly worstWeek: { readonly firstHour: number; readonly hoursAboveLimit: number } | null;
  /** Hours at each whole % of relative humidity, 0 to 100. */
  readonly humidityHours: readonly number[];
  readonly starts: number;
  /** Runs of each whole minute; the last place holds 240 min and more. */
  readonly runsByMinute: readonly number[];
  readonly meanRunMin: number | null;
  readonly firstStageHours: number;
  readonly secondStageHours: number;
  /** Second stage over all cooling hours; `null` without cooling. */
  readonly secondStageShare: number | null;
  readonly frostLimitHours: number;
  /** Water that left by the drain, and that dried back off the coil. */
  readonly drainedLb: number;
  readonly reEvaporatedLb: number;
  readonly condensedOnSurfacesLb: number;
  readonly compressorKwh: number;
  readonly fanKwh: number;
  readonly auxiliaryKwh: number;
  readonly dehumidifierKwh: number;
  readonly dehumidifierHours: number;
  readonly dehumidifierPints: number;
  /** °F·h under the setpoint while cooling runs, and over the temperature at which it starts. */
  readonly belowSetpointDegreeHours: number;
  readonly aboveSetpointDegreeHours: number;
  readonly hottestF: number;
  /** Coldest the rooms were while cooling ran. */
  readonly coldestInRunF: number;
  /** Sensible heat of the rooms, Btu. */
  readonly heat: Balance;
  /** Water of rooms and coil, lb. */
  readonly water: Balance;
  readonly hourF: Float64Array;
  readonly hourRhPct: Float64Array;
  readonly hourRunMinutes: Float64Array;
  /** Every step of the hours asked for; `null` when none were. */
  readonly trace: YearTrace | null;
};

const WEEK_H = 168;

/**
 * Names the loop's numbers.
 *
 * @param began - State as the year began, `STATE` numbers.
 * @param ended - State as it ended.
 */
export function yearResult(
  plan: YearPlan,
  weather: Weather,
  began: Float64Array,
  ended: Float64Array,
  totals: YearTotals,
): YearResult {
  const sum = (place: number): number => totals.sums[place] ?? 0;
  const wetHours = Array.from({ length: 12 }, () => 0);
  let wet = 0;
  for (let hour = 0; hour < plan.hours; hour++) {
    const hours = (totals.hourWetMinutes[hour] ?? 0) / 60;
    const month = (weather.month[hour] ?? 1) - 1;
    wetHours[month] = (wetHours[month] ?? 0) + hours;
    wet += hours;
  }
  const runs = totals.runLengths.reduce((count, one) => count + one, 0);
  const cooling = sum(SUM.firstStageH) + sum(SUM.secondStageH);
  return {
    dryHours: plan.hours - wet,
    hoursAboveLimit: wet,
    hoursAboveLimitByMonth: wetHours,
    coolingHoursByMonth: byMonth(weather, totals.hourRunMinutes, ({ sum }) => sum / 60),
    meanRhPctByMonth: byMonth(weather, totals.hourRhPct, ({ sum, count }) =>
      count > 0 ? sum / count : null,
    ),
    worstWeek: worstWeek(totals.hourWetMinutes),
    humidityHours: Array.from(totals.humidityMinutes, (minutes) => minutes / 60),
    starts: sum(SUM.starts),
    runsByMinute: Array.from(totals.runLengths),
    meanRunMin: runs > 0 ? (cooling * 60) / Math.max(runs, sum(SUM.starts)) : null,
    firstStageHours: sum(SUM.firstStageH),
    secondStageHours: sum(SUM.secondStageH),
    secondStageShare: cooling > 0 ? sum(SUM.secondStageH) / cooling : null,
    frostLimitHours: sum(SUM.frostH),
    drainedLb: sum(SUM.drainedLb),
    reEvaporatedLb: sum(SUM.evaporatedLb),
    condensedOnSurfacesLb: sum(SUM.surfaceLb),
    compressorKwh: sum(SUM.compressorWh) / 1_000,
    fanKwh: sum(SUM.fanWh) / 1_000,
    auxiliaryKwh: sum(SUM.auxiliaryBtu) / 3_412,
    dehumidifierKwh: sum(SUM.dehumidifierWh) / 1_000,
    dehumidifierHours: sum(SUM.dehumidifierH),
    dehumidifierPints: sum(SUM.dehumidifierLb) / LB_PER_PINT,
    belowSetpointDegreeHours: sum(SUM.belowSetpointDegreeH),
    aboveSetpointDegreeHours: sum(SUM.aboveSetpointDegreeH),
    hottestF: sum(SUM.hottestF),
    coldestInRunF: sum(SUM.coldestInRunF),
    ...balances(plan, began, ended, sum),
    hourF: totals.hourF,
    hourRhPct: totals.hourRhPct,
    hourRunMinutes: totals.hourRunMinutes,
    trace: totals.trace.hours === 0 ? null : totals.trace,
  };
}

function byMonth<T>(
  weather: Weather,
  hours: Float64Array,
  of: (month: { readonly sum: number; readonly count: number }) => T,
): readonly T[] {
  const sums = Array.from({ length: 12 }, () => ({ sum: 0, count: 0 }));
  for (let hour = 0; hour < hours.length; hour++) {
    const month = sums[(weather.month[hour] ?? 1) - 1];
    if (month === undefined) continue;
    month.sum += hours[hour] ?? 0;
    month.count += 1;
  }
  return sums.map(of);
}

function balances(
  plan: YearPlan,
  began: Float64Array,
  ended: Float64Array,
  sum: (place: number) => number,
): { readonly heat: Balance; readonly water: Balance } {
  const grown = (place: number): number => (ended[place] ?? 0) - (began[place] ?? 0);
  const { airCapacitanceBtuPerF, massCapacitanceBtuPerF } = plan.house;
  return {
    heat: balance(
      [
        ...[SUM.conductionBtu, SUM.outdoorAirBtu, SUM.sunBtu, SUM.gainsBtu, SUM.fanBtu].map(sum),
        ...[SUM.dehumidifierBtu, SUM.heatPumpBtu, SUM.auxiliaryBtu, SUM.surfaceBtu].map(sum),
        -sum(SUM.coilSensibleBtu),
        -sum(SUM.coilEvaporationBtu),
      ],
      airCapacitanceBtuPerF * grown(STATE.airF) + massCapacitanceBtuPerF * grown(STATE.massF),
    ),
    // The coil's own water is inside the account: only the drain takes it out.
    water: balance(
      [
        sum(SUM.insideLb),
        sum(SUM.outdoorAirLb),
        -sum(SUM.drainedLb),
        -sum(SUM.dehumidifierLb),
        -sum(SUM.surfaceLb),
      ],
      plan.airLb * grown(STATE.humidityRatio) +
        plan.bufferLb * grown(STATE.bufferRatio) +
        grown(STATE.coilLb),
    ),
  };
}

function balance(flows: readonly number[], stored: number): Balance {
  const gained = flows.filter((flow) => flow > 0).reduce((total, flow) => total + flow, 0);
  const lost = -flows.filter((flow) => flow < 0).reduce((total, flow) => total + flow, 0);
  const residual = gained - lost - stored;
  return { in: gained, out: lost, stored, residual, relative: residual / Math.max(gained + lost, 1) };
}

function worstWeek(wetMinutes: Float64Array): YearResult["worstWeek"] {
  let running = 0;
  let worst = 0;
  let firstHour = 0;
  for (let hour = 0; hour < wetMinutes.length; hour++) {
    running += (wetMinutes[hour] ?? 0) - (wetMinutes[hour - WEEK_H] ?? 0);
    if (hour >= WEEK_H - 1 && running > worst) {
      worst = running;
      firstHour = hour - WEEK_H + 1;
    }
  }
  return worst > 0 ? { firstHour, hoursAboveLimit: worst / 60 } : null;
}
