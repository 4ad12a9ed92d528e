import { mean, median } from "simple-statistics";
import type { LogContext } from "./context";
import type { LoadDay } from "./load-days";
import { theilSen } from "./theil-sen";

/** The load of the hour in which the house cools most, against the hottest hour of its day: what a load summary speaks of. */
export type PeakHour = {
  /** Hour of the house's clock, 0 to 23. */
  readonly hour: number;
  readonly dayCount: number;
  /** Btu/h per °F of the day's hottest hour, with its 95 % interval. */
  readonly slopeBtuhPerF: number;
  readonly slopeLow: number;
  readonly slopeHigh: number;
  readonly interceptBtuh: number;
  /** Share of the days on which the largest stage ran that hour through: then the load was at least what was delivered. */
  readonly fullShare: number;
};

/** The peak-hour line on the day the load summary was made for. */
export type AtDesign = {
  readonly sensibleBtuh: number;
  /** 95 % interval that follows from the slope's, Btu/h. */
  readonly low: number;
  readonly high: number;
  /** Share of that hour the largest stage would run. */
  readonly duty: number;
  /** Sensible capacity of the largest stage over that load. */
  readonly oversizeRatio: number;
  /** Over the load summary's design sensible load. */
  readonly overLoadSummary: number;
  /** °F beyond the hottest day of the log; 0 inside. */
  readonly beyondLogF: number;
};

const LEAST_DAYS = 8;
/** Hottest hours differ less than days' means do; what so little can tell is in the interval. */
const LEAST_SPREAD_F = 5;
const MOST_BEYOND_F = 10;
/** A meter's rounding apart from running the whole hour. */
const FULL = 0.98;

type Point = { readonly x: number; readonly y: number };

/**
 * The line of the hour of most cooling. A load summary gives the hottest hour's load at the design dry bulb; a day's mean
 * load at its mean temperature is less than that by the sun and the night, so the two are never held against each other.
 *
 * @param days - Days of cooling, from {@link loadDays}.
 * @param largestBtuh - Sensible capacity of the largest stage, Btu/h. 1 to 500,000.
 * @returns Null with fewer than 8 days, less than 5 °F between their hottest hours, or a load that does not rise.
 * @see Peak-hour load at the outdoor design dry bulb: ANSI/ACCA 2 Manual J (from memory, verify against the standard).
 */
export function peakHour(days: readonly LoadDay[], largestBtuh: number): PeakHour | null {
  const hour = hourOfMostCooling(days);
  const points = pointsAt(days, hour);
  const hottest = points.map(({ x }) => x);
  if (points.length < LEAST_DAYS || Math.max(...hottest) - Math.min(...hottest) < LEAST_SPREAD_F) return null;
  const line = theilSen(points);
  if (line === null || !(line.slope > 0)) return null;
  const full = points.filter(({ y }) => y >= FULL * largestBtuh);
  return {
    hour,
    dayCount: points.length,
    slopeBtuhPerF: line.slope,
    slopeLow: line.slopeLow,
    slopeHigh: line.slopeHigh,
    interceptBtuh: line.intercept,
    fullShare: full.length / points.length,
  };
}

/**
 * The peak-hour line at the design outdoor temperature.
 *
 * @param days - The days behind the line.
 * @param context - Capacities in Btu/h and the load summary's design point.
 * @returns Loads in Btu/h; null without a design point, or when that lies more than 10 °F beyond the hottest day.
 * @see The straight line through the points' medians with the slope's interval (computed).
 */
export function peakHourAtDesign(
  line: PeakHour | null,
  days: readonly LoadDay[],
  { design, deliveredSensibleBtuhByStage: capacities }: LogContext,
): AtDesign | null {
  if (line === null || design === null || capacities === null) return null;
  const points = pointsAt(days, line.hour);
  const hottestF = Math.max(...points.map(({ x }) => x));
  if (design.outdoorF > hottestF + MOST_BEYOND_F) return null;
  const sensibleBtuh = line.interceptBtuh + line.slopeBtuhPerF * design.outdoorF;
  if (!(sensibleBtuh > 0)) return null;
  const beyondMiddleF = design.outdoorF - median(points.map(({ x }) => x));
  const edges = [line.slopeLow, line.slopeHigh].map(
    (slope) => sensibleBtuh + (slope - line.slopeBtuhPerF) * beyondMiddleF,
  );
  const largest = Math.max(...capacities);
  return {
    sensibleBtuh,
    low: Math.max(0, Math.min(...edges)),
    high: Math.max(...edges),
    duty: sensibleBtuh / largest,
    oversizeRatio: largest / sensibleBtuh,
    overLoadSummary: sensibleBtuh / design.sensibleBtuh,
    beyondLogF: Math.max(0, design.outdoorF - hottestF),
  };
}

function hourOfMostCooling(days: readonly LoadDay[]): number {
  let [best, most] = [0, Number.NEGATIVE_INFINITY];
  for (let hour = 0; hour < 24; hour++) {
    const loads = days.map(({ hourlyBtuh }) => hourlyBtuh[hour] ?? Number.NaN).filter(Number.isFinite);
    if (loads.length < Math.min(days.length, LEAST_DAYS) || mean(loads) <= most) continue;
    [best, most] = [hour, mean(loads)];
  }
  return best;
}

function pointsAt(days: readonly LoadDay[], hour: number): readonly Point[] {
  return days
    .map(({ hottestHourF, hourlyBtuh }) => ({ x: hottestHourF, y: hourlyBtuh[hour] ?? Number.NaN }))
    .filter(({ x, y }) => Number.isFinite(x) && Number.isFinite(y));
}
