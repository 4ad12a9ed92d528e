import { type LogSeries, meanOf } from "./log-series";

/** How the house went through its very humid days. Shares 0 to 1; null where the log lacks the columns. */
export type HumidDays = {
  readonly days: number;
  readonly hours: number;
  readonly meanRhPct: number;
  /** Share of those hours from 50 to 60 %. */
  readonly share50To60: number;
  /** Share of the cooling time in the first stage alone. */
  readonly firstStageShare: number | null;
  /** Share of the second stage's time between 12:00 and 19:00. */
  readonly secondStageAfternoonShare: number | null;
};

/** A day is very humid when the outdoor dew point is at least this in the mean, °F (common practice, no source). */
export const VERY_HUMID_DEW_POINT_F = 70;
const LEAST_COVERED_SHARE = 0.75;

/** Null without indoor humidity or outdoor dew point, or without such a day. */
export function humidDays(series: LogSeries): HumidDays | null {
  const rh = series.channel("indoorRhPct");
  const dewPoint = series.outdoorDewPointF;
  if (rh === null || dewPoint === null) return null;
  const humid = veryHumidDays(series, dewPoint);
  const second = series.channel("secondStageShare");
  const sums = { count: 0, rh: 0, good: 0, cooling: 0, second: 0, afternoon: 0 };
  for (let index = 0; index < series.length; index++) {
    const value = rh[index] ?? Number.NaN;
    if (Number.isNaN(value) || !humid.has(series.localDay[index] ?? 0)) continue;
    sums.count++;
    sums.rh += value;
    if (value >= 50 && value <= 60) sums.good++;
    const [on, high] = [series.coolingShare?.[index] ?? Number.NaN, second?.[index] ?? Number.NaN];
    if (Number.isNaN(on) || Number.isNaN(high)) continue;
    const hour = series.localHour[index] ?? 0;
    sums.cooling += on;
    sums.second += high;
    if (hour >= 12 && hour < 19) sums.afternoon += high;
  }
  if (sums.count === 0) return null;
  return {
    days: humid.size,
    hours: sums.count * series.hoursEach,
    meanRhPct: sums.rh / sums.count,
    share50To60: sums.good / sums.count,
    firstStageShare: sums.cooling === 0 ? null : (sums.cooling - sums.second) / sums.cooling,
    secondStageAfternoonShare: sums.second === 0 ? null : sums.afternoon / sums.second,
  };
}

function veryHumidDays(series: LogSeries, dewPoint: Float64Array): ReadonlySet<number> {
  const days = new Map<number, { sum: number; count: number }>();
  for (let index = 0; index < series.length; index++) {
    const value = dewPoint[index] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    const key = series.localDay[index] ?? 0;
    const day = days.get(key) ?? { sum: 0, count: 0 };
    day.sum += value;
    day.count++;
    days.set(key, day);
  }
  const whole = 24 / series.hoursEach;
  return new Set(
    [...days].flatMap(([key, { sum, count }]) =>
      count >= LEAST_COVERED_SHARE * whole && (meanOf(sum, count) ?? 0) >= VERY_HUMID_DEW_POINT_F
        ? [key]
        : [],
    ),
  );
}
