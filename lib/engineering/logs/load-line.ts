import { mean, median } from "simple-statistics";
import type { LogContext } from "./context";
import type { LogSeries } from "./log-series";

/** One day: mean outdoor temperature and mean sensible cooling delivered. */
export type LoadDay = { readonly localDay: number; readonly outdoorF: number; readonly sensibleBtuh: number };

/** The house's own cooling load against outdoor temperature, from running time and delivered capacity. */
export type LoadLine = {
  /** The days on it, for its picture. What is kept with a job leaves them out. */
  readonly days: readonly LoadDay[];
  readonly dayCount: number;
  /** Btu/h per °F, with its 95 % interval. */
  readonly slopeBtuhPerF: number;
  readonly slopeLow: number;
  readonly slopeHigh: number;
  readonly interceptBtuh: number;
  /** Outdoor daily mean at which no cooling is needed. */
  readonly zeroLoadF: number;
  /**
   * How far the line moved in the log: median distance of the last third of the days from it, less that of the first third,
   * over the mean load. More running time for the same weather is positive. Null with fewer than 15 days.
   */
  readonly movedBy: number | null;
  /**
   * The line at the design outdoor temperature. Null without a design point, or when that lies more than 10 °F beyond the
   * hottest day. Daily means leave out the afternoon's peak, so this is the load of a day that hot throughout.
   */
  readonly atDesign: {
    readonly sensibleBtuh: number;
    /** Share of the time the largest stage would run. */
    readonly duty: number;
    /** Sensible capacity of the largest stage over that load. */
    readonly oversizeRatio: number;
    /** Over the load summary's design sensible load. */
    readonly overLoadSummary: number;
    /** °F beyond the hottest day of the log; 0 inside. */
    readonly beyondLogF: number;
  } | null;
};

const LEAST_DAYS = 8;
const LEAST_DAYS_TO_MOVE = 15;
const LEAST_SPREAD_F = 8;
const LEAST_COVERED_SHARE = 0.9;
/** A day with less running than this is not on the line but at its foot. */
const LEAST_DUTY = 0.02;
const MOST_BEYOND_F = 10;

/**
 * The measured load line, by Theil and Sen: the median of the slopes between all pairs of days, which a few odd days
 * (guests, an open window) do not move.
 *
 * @returns Null without stages, outdoor temperature or delivered capacity, with fewer than 8 days of cooling, less than
 * 8 °F between their temperatures, or when the load does not rise with temperature.
 * @see Sen 1968, Journal of the American Statistical Association 63, slope and interval by Kendall's tau (recalled).
 */
export function loadLine(series: LogSeries, context: LogContext): LoadLine | null {
  const capacities = context.deliveredSensibleBtuhByStage;
  if (capacities === null) return null;
  const days = coolingDays(series, capacities);
  const hottestF = days.reduce((most, { outdoorF }) => Math.max(most, outdoorF), Number.NEGATIVE_INFINITY);
  const coolestF = days.reduce((least, { outdoorF }) => Math.min(least, outdoorF), Number.POSITIVE_INFINITY);
  if (days.length < LEAST_DAYS || hottestF - coolestF < LEAST_SPREAD_F) return null;
  const line = theilSen(days);
  if (line === null || !(line.slopeBtuhPerF > 0)) return null;
  return {
    days,
    dayCount: days.length,
    ...line,
    zeroLoadF: -line.interceptBtuh / line.slopeBtuhPerF,
    movedBy: movedBy(days, line),
    atDesign: atDesign(line, hottestF, context),
  };
}

function movedBy(
  days: readonly LoadDay[],
  line: { readonly slopeBtuhPerF: number; readonly interceptBtuh: number },
): number | null {
  if (days.length < LEAST_DAYS_TO_MOVE) return null;
  const third = Math.floor(days.length / 3);
  const distances = days.map(
    ({ outdoorF, sensibleBtuh }) => sensibleBtuh - line.interceptBtuh - line.slopeBtuhPerF * outdoorF,
  );
  const meanLoad = mean(days.map(({ sensibleBtuh }) => sensibleBtuh));
  return (median(distances.slice(-third)) - median(distances.slice(0, third))) / meanLoad;
}

function atDesign(
  line: { readonly slopeBtuhPerF: number; readonly interceptBtuh: number },
  hottestF: number,
  { design, deliveredSensibleBtuhByStage: capacities }: LogContext,
): LoadLine["atDesign"] {
  if (design === null || capacities === null || design.outdoorF > hottestF + MOST_BEYOND_F) return null;
  const sensibleBtuh = line.interceptBtuh + line.slopeBtuhPerF * design.outdoorF;
  if (!(sensibleBtuh > 0)) return null;
  const largest = Math.max(...capacities);
  return {
    sensibleBtuh,
    duty: sensibleBtuh / largest,
    oversizeRatio: largest / sensibleBtuh,
    overLoadSummary: sensibleBtuh / design.sensibleBtuh,
    beyondLogF: Math.max(0, design.outdoorF - hottestF),
  };
}

/** Days of the house's clock with nearly all samples read and some cooling. */
function coolingDays(series: LogSeries, capacities: readonly number[]): readonly LoadDay[] {
  const outdoorF = series.channel("outdoorF");
  const cooling = series.coolingShare;
  if (outdoorF === null || cooling === null) return [];
  const second = series.channel("secondStageShare");
  const [firstBtuh = 0, secondBtuh = firstBtuh] = capacities;
  const days = new Map<number, { count: number; outdoor: number; heat: number; share: number }>();
  for (let index = 0; index < series.length; index++) {
    const [out, on] = [outdoorF[index] ?? Number.NaN, cooling[index] ?? Number.NaN];
    const high = second === null ? 0 : (second[index] ?? Number.NaN);
    if (Number.isNaN(out) || Number.isNaN(on) || Number.isNaN(high)) continue;
    const key = series.localDay[index] ?? 0;
    const day = days.get(key) ?? { count: 0, outdoor: 0, heat: 0, share: 0 };
    day.count++;
    day.outdoor += out;
    day.share += on;
    day.heat += Math.max(0, on - high) * firstBtuh + high * secondBtuh;
    days.set(key, day);
  }
  const whole = 24 / series.hoursEach;
  return [...days].flatMap(([localDay, { count, outdoor, heat, share }]) =>
    count < LEAST_COVERED_SHARE * whole || share / count < LEAST_DUTY
      ? []
      : [{ localDay, outdoorF: outdoor / count, sensibleBtuh: heat / count }],
  );
}

function theilSen(days: readonly LoadDay[]) {
  const slopes: number[] = [];
  for (const [index, one] of days.entries()) {
    for (const other of days.slice(index + 1)) {
      const apart = other.outdoorF - one.outdoorF;
      if (Math.abs(apart) > 1e-6) slopes.push((other.sensibleBtuh - one.sensibleBtuh) / apart);
    }
  }
  if (slopes.length === 0) return null;
  const sorted = Float64Array.from(slopes).sort();
  const slopeBtuhPerF = median(slopes);
  const n = days.length;
  // 1.96 standard deviations of Kendall's S, in pairs.
  const width = 1.96 * Math.sqrt((n * (n - 1) * (2 * n + 5)) / 18);
  const low = Math.max(0, Math.floor((sorted.length - width) / 2));
  const high = Math.min(sorted.length - 1, Math.ceil((sorted.length + width) / 2));
  return {
    slopeBtuhPerF,
    slopeLow: sorted[low] ?? slopeBtuhPerF,
    slopeHigh: sorted[high] ?? slopeBtuhPerF,
    interceptBtuh: median(days.map(({ outdoorF, sensibleBtuh }) => sensibleBtuh - slopeBtuhPerF * outdoorF)),
  };
}
