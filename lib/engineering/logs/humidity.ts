import { counted } from "./humidity-counts";
import { type LogSeries, meanOf } from "./log-series";

/** Hours and what the house was like in them. Null where nothing was read. */
export type HumidityGroup = {
  readonly hours: number;
  readonly meanRhPct: number | null;
  readonly meanDewPointF: number | null;
  /** Share of the hours above the limit, 0 to 1. */
  readonly wetShare: number | null;
};

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
  const { read, dry, between, sum } = counted(rh, limitPct);
  if (read.length === 0) return null;
  const group = groupOf(series, rh, limitPct);
  const hourOf = (index: number) => series.localHour[index] ?? 0;
  const stepOf = (index: number) => Math.floor((series.outdoorDewPointF?.[index] ?? Number.NaN) / STEP_F);
  return {
    limitPct,
    hours: read.length * series.hoursEach,
    dryHours: dry * series.hoursEach,
    dryShare: dry / read.length,
    share50To60: between / read.length,
    meanRhPct: sum / read.length,
    medianRhPct: ((read[(read.length - 1) >> 1] ?? 0) + (read[read.length >> 1] ?? 0)) / 2,
    highestRhPct: read.at(-1) ?? 0,
    meanDewPointF: meanOfSeries(series.indoorDewPointF),
    longestWetSpell: longestWetSpell(series, rh, limitPct),
    byHourOfDay: group(hourOf).map(([hour, found]) => ({ hour, ...found })),
    byOutdoorDewPoint: group(stepOf).map(([step, found]) => ({
      fromF: step * STEP_F,
      toF: (step + 1) * STEP_F,
      ...found,
    })),
    overOutdoor: overOutdoor(series),
    meanOutdoorDewPointF: meanOfSeries(series.outdoorDewPointF),
    outdoorDewPointCheckF: outdoorDewPointCheck(series),
  };
}

/** Groups the samples with a humidity reading by a whole number; NaN belongs to no group. */
function groupOf(series: LogSeries, rh: Float64Array, limitPct: number) {
  return (keyOf: (index: number) => number): readonly (readonly [number, HumidityGroup])[] => {
    const groups = new Map<
      number,
      { count: number; rh: number; wet: number; dew: number; dewCount: number }
    >();
    for (let index = 0; index < series.length; index++) {
      const value = rh[index] ?? Number.NaN;
      const key = keyOf(index);
      if (Number.isNaN(value) || Number.isNaN(key)) continue;
      let one = groups.get(key);
      if (one === undefined) {
        one = { count: 0, rh: 0, wet: 0, dew: 0, dewCount: 0 };
        groups.set(key, one);
      }
      one.count++;
      one.rh += value;
      if (value > limitPct) one.wet++;
      const dew = series.indoorDewPointF?.[index] ?? Number.NaN;
      if (!Number.isNaN(dew)) {
        one.dew += dew;
        one.dewCount++;
      }
    }
    return [...groups]
      .sort(([a], [b]) => a - b)
      .map(([key, one]) => [
        key,
        {
          hours: one.count * series.hoursEach,
          meanRhPct: meanOf(one.rh, one.count),
          meanDewPointF: meanOf(one.dew, one.dewCount),
          wetShare: meanOf(one.wet, one.count),
        },
      ]);
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
