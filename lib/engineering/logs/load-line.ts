import { mean, median } from "simple-statistics";
import type { LogContext } from "./context";
import { type LoadDay, loadDays } from "./load-days";
import type { LogSeries } from "./log-series";
import { type AtDesign, type PeakHour, peakHour, peakHourAtDesign } from "./peak-hour";
import { theilSen } from "./theil-sen";

/** The house's own cooling load against outdoor temperature, from running time and delivered capacity. */
export type LoadLine = {
  /** The days on it, for its picture. What is kept with a job leaves them out. */
  readonly days: readonly LoadDay[];
  readonly dayCount: number;
  /** Day's mean load over day's mean temperature, Btu/h per °F, with its 95 % interval. */
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
  /** The line of the hour of most cooling, which alone is held against capacity and load summary. */
  readonly peakHour: PeakHour | null;
  readonly atDesign: AtDesign | null;
};

const LEAST_DAYS = 8;
const LEAST_DAYS_TO_MOVE = 15;
const LEAST_SPREAD_F = 8;

/**
 * The measured load line through the days' means.
 *
 * @returns Null without stages, outdoor temperature or delivered capacity, with fewer than 8 days of cooling, less than
 * 8 °F between their temperatures, or when the load does not rise with temperature.
 * @see The line of Theil and Sen, in `theil-sen`.
 */
export function loadLine(series: LogSeries, context: LogContext): LoadLine | null {
  const capacities = context.deliveredSensibleBtuhByStage;
  if (capacities === null) return null;
  const days = loadDays(series, capacities);
  const outdoorF = days.map((day) => day.outdoorF);
  if (days.length < LEAST_DAYS || Math.max(...outdoorF) - Math.min(...outdoorF) < LEAST_SPREAD_F) return null;
  const line = theilSen(days.map((day) => ({ x: day.outdoorF, y: day.sensibleBtuh })));
  if (line === null || !(line.slope > 0)) return null;
  const peak = peakHour(days, Math.max(...capacities));
  return {
    days,
    dayCount: days.length,
    slopeBtuhPerF: line.slope,
    slopeLow: line.slopeLow,
    slopeHigh: line.slopeHigh,
    interceptBtuh: line.intercept,
    zeroLoadF: -line.intercept / line.slope,
    movedBy: movedBy(days, line),
    peakHour: peak,
    atDesign: peakHourAtDesign(peak, days, context),
  };
}

function movedBy(
  days: readonly LoadDay[],
  line: { readonly slope: number; readonly intercept: number },
): number | null {
  if (days.length < LEAST_DAYS_TO_MOVE) return null;
  const third = Math.floor(days.length / 3);
  const distances = days.map(
    ({ outdoorF, sensibleBtuh }) => sensibleBtuh - line.intercept - line.slope * outdoorF,
  );
  const meanLoad = mean(days.map(({ sensibleBtuh }) => sensibleBtuh));
  return (median(distances.slice(-third)) - median(distances.slice(0, third))) / meanLoad;
}
