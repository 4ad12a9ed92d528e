import { type LogSeries, meanOf } from "./log-series";
import type { Run } from "./runs";

const LEAST_HALF_HOURS = 10;

/**
 * Starts an hour, over the clock hours that had some cooling and over those of 40 to 60 %. Only hours with all their time known are taken.
 *
 * @param cooling - Share of each interval with cooling, 0 to 1; NaN is a gap.
 * @param runs - The runs of that cooling.
 * @returns Starts an hour; null without such hours, at half with fewer than 10.
 * @see Counting (computed).
 */
export function byClockHour(series: LogSeries, cooling: Float64Array, runs: readonly Run[]) {
  const hours = new Map<number, { share: number; count: number; starts: number }>();
  const keyOf = (ms: number) => Math.floor(ms / 3_600_000);
  // Time rises, so the samples of an hour follow each other.
  let [key, hour] = [Number.NaN, { share: 0, count: 0, starts: 0 }];
  for (let index = 0; index < series.length; index++) {
    const value = cooling[index] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    const now = keyOf(series.timeMs[index] ?? 0);
    if (now !== key) {
      [key, hour] = [now, { share: 0, count: 0, starts: 0 }];
      hours.set(key, hour);
    }
    hour.share += value;
    hour.count++;
  }
  for (const { startMs } of runs) {
    const hour = hours.get(keyOf(startMs));
    if (hour !== undefined) hour.starts++;
  }
  const full = [...hours.values()].filter(({ count }) => count * series.hoursEach > 0.9);
  const active = full.filter(({ share }) => share > 0);
  const half = active.filter(({ share, count }) => share / count >= 0.4 && share / count <= 0.6);
  const startsAnHour = (of: typeof full) =>
    meanOf(
      of.reduce((sum, { starts }) => sum + starts, 0),
      of.length,
    );
  return {
    cyclesPerHour: startsAnHour(active),
    cyclesPerHourAtHalf: half.length < LEAST_HALF_HOURS ? null : startsAnHour(half),
  };
}
