import { counted } from "./humidity-counts";
import { groupsOf, type HumidityGroup, stepsOf } from "./humidity-groups";
import { type LogSeries, meanOf, moistureAllowed } from "./log-series";

export type WetSpell = { readonly fromMs: number; readonly toMs: number; readonly hours: number };

export type HumidityAnalysis = {
  readonly limitPct: number;
  /** Hours with an indoor humidity reading. */
  readonly hours: number;
  /** Hours at or below the limit. */
  readonly dryHours: number;
  readonly dryShare: number;
  /** Share of the hours from 50 to 60 %. */
  readonly share50To60: number;
  readonly meanRhPct: number;
  readonly medianRhPct: number;
  readonly highestRhPct: number;
  readonly meanDewPointF: number | null;
  /** Longest time above the limit without a break or a gap. */
  readonly longestWetSpell: WetSpell | null;
  /** By hour of the house's clock, 0 to 23. */
  readonly byHourOfDay: readonly (HumidityGroup & { readonly hour: number })[];
  /** By outdoor dew point in steps of 5 °F; empty without outdoor readings. */
  readonly byOutdoorDewPoint: readonly (HumidityGroup & { readonly fromF: number; readonly toF: number })[];
  /** Indoor minus outdoor moisture; null without outdoor readings. */
  readonly overOutdoor: {
    readonly hours: number;
    readonly meanGrainsPerLb: number;
    /** Share of the hours in which indoors was the wetter. */
    readonly wetterShare: number;
  } | null;
  readonly meanOutdoorDewPointF: number | null;
  /** Hours in which outdoor air held more moisture than the house may at its limit; null without outdoor readings. */
  readonly humidOutdoorHours: number | null;
  /**
   * Computed from outdoor temperature and humidity, minus the station's own dew point; mean over frost-free samples, °F.
   * Stations give dew points over liquid water also below freezing, where moist air here is over ice.
   */
  readonly outdoorDewPointCheckF: number | null;
};

const STEP_F = 5;
const FREEZING_F = 32;
const GRAINS_PER_LB = 7_000;

/**
 * What the log says about indoor humidity; null when it holds none.
 *
 * @param limitPct - Humidity limit of the job, % RH, 30 to 70.
 */
export function humidityAnalysis(series: LogSeries, limitPct: number): HumidityAnalysis | null {
  const rh = series.channel("indoorRhPct");
  if (rh === null) return null;
  const { count, dry, between, sum, median, highest } = counted(rh, limitPct);
  if (count === 0) return null;
  const groups = (keys: ArrayLike<number>) => groupsOf(series, rh, limitPct, keys);
  return {
    limitPct,
    hours: count * series.hoursEach,
    dryHours: dry * series.hoursEach,
    dryShare: dry / count,
    share50To60: between / count,
    meanRhPct: sum / count,
    medianRhPct: median,
    highestRhPct: highest,
    meanDewPointF: meanOfSeries(series.indoorDewPointF),
    longestWetSpell: longestWetSpell(series, rh, limitPct),
    byHourOfDay: groups(series.localHour).map(([hour, found]) => ({ hour, ...found })),
    byOutdoorDewPoint: groups(stepsOf(series.outdoorDewPointF, STEP_F)).map(([step, found]) => ({
      fromF: step * STEP_F,
      toF: (step + 1) * STEP_F,
      ...found,
    })),
    overOutdoor: overOutdoor(series),
    meanOutdoorDewPointF: meanOfSeries(series.outdoorDewPointF),
    humidOutdoorHours: humidOutdoorHours(series, rh, limitPct),
    outdoorDewPointCheckF: outdoorDewPointCheck(series),
  };
}

function longestWetSpell(series: LogSeries, rh: Float64Array, limitPct: number): WetSpell | null {
  let longest = { first: 0, count: 0 };
  let first = 0;
  let count = 0;
  for (let index = 0; index < series.length; index++) {
    if (series.afterGap[index] === 1) count = 0;
    if ((rh[index] ?? Number.NaN) > limitPct) {
      if (count === 0) first = index;
      count++;
      if (count > longest.count) longest = { first, count };
    } else count = 0;
  }
  if (longest.count === 0) return null;
  const fromMs = series.timeMs[longest.first] ?? 0;
  const lastMs = series.timeMs[longest.first + longest.count - 1] ?? fromMs;
  return {
    fromMs,
    toMs: lastMs + series.intervalMin * 60_000,
    hours: longest.count * series.hoursEach,
  };
}

function overOutdoor(series: LogSeries): HumidityAnalysis["overOutdoor"] {
  const { indoorHumidityRatio: indoor, outdoorHumidityRatio: outdoor } = series;
  if (indoor === null || outdoor === null) return null;
  let sum = 0;
  let count = 0;
  let wetter = 0;
  for (let index = 0; index < series.length; index++) {
    const difference = (indoor[index] ?? Number.NaN) - (outdoor[index] ?? Number.NaN);
    if (Number.isNaN(difference)) continue;
    sum += difference;
    count++;
    if (difference > 0) wetter++;
  }
  if (count === 0) return null;
  return {
    hours: count * series.hoursEach,
    meanGrainsPerLb: (sum / count) * GRAINS_PER_LB,
    wetterShare: wetter / count,
  };
}

function humidOutdoorHours(series: LogSeries, rh: Float64Array, limitPct: number): number | null {
  const { outdoorHumidityRatio: outdoor } = series;
  if (series.indoorHumidityRatio === null || outdoor === null) return null;
  let [known, humid] = [0, 0];
  for (let index = 0; index < series.length; index++) {
    const allowed = moistureAllowed(series, rh, index, limitPct);
    const out = outdoor[index] ?? Number.NaN;
    if (Number.isNaN(allowed) || Number.isNaN(out)) continue;
    known++;
    if (out > allowed) humid++;
  }
  return known === 0 ? null : humid * series.hoursEach;
}

function outdoorDewPointCheck(series: LogSeries): number | null {
  const station = series.channel("outdoorDewPointF");
  const computed = series.outdoorDewPointF;
  if (station === null || computed === null || series.channel("outdoorRhPct") === null) return null;
  let sum = 0;
  let count = 0;
  for (let index = 0; index < series.length; index++) {
    const [mine, theirs] = [computed[index] ?? Number.NaN, station[index] ?? Number.NaN];
    if (!(mine >= FREEZING_F && theirs >= FREEZING_F)) continue;
    sum += mine - theirs;
    count++;
  }
  return meanOf(sum, count);
}

function meanOfSeries(values: Float64Array | null): number | null {
  let sum = 0;
  let count = 0;
  for (let index = 0; index < (values?.length ?? 0); index++) {
    const value = values?.[index] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    sum += value;
    count++;
  }
  return meanOf(sum, count);
}
