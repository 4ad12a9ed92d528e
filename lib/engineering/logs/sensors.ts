import { type LogSeries, meanOf } from "./log-series";
import type { LogChannel } from "./samples";

export type StillStretch = {
  readonly channel: LogChannel;
  readonly fromMs: number;
  readonly hours: number;
  readonly value: number;
};

export type SensorAnalysis = {
  /** The longest time each sensor read the very same, gaps aside. */
  readonly longestStill: readonly StillStretch[];
  /** Second minus first sensor, mean; null without a second. */
  readonly secondMinusFirstF: number | null;
  readonly secondMinusFirstRhPct: number | null;
};

const WATCHED: readonly LogChannel[] = ["indoorF", "indoorRhPct", "outdoorF", "outdoorRhPct"];

/** How long sensors stood still and how far two of them differ. */
export function sensorAnalysis(series: LogSeries): SensorAnalysis {
  return {
    longestStill: WATCHED.flatMap((channel) => {
      const values = series.channel(channel);
      const found = values === null ? null : longestStill(series, channel, values);
      return found === null ? [] : [found];
    }),
    secondMinusFirstF: meanDifference(series, "secondIndoorF", "indoorF"),
    secondMinusFirstRhPct: meanDifference(series, "secondIndoorRhPct", "indoorRhPct"),
  };
}

function longestStill(series: LogSeries, channel: LogChannel, values: Float64Array): StillStretch | null {
  let longest: { first: number; count: number } | null = null;
  let first = 0;
  let count = 0;
  for (let index = 0; index < series.length; index++) {
    const value = values[index] ?? Number.NaN;
    if (Number.isNaN(value)) {
      count = 0;
      continue;
    }
    if (count > 0 && series.afterGap[index] === 0 && value === values[index - 1]) count++;
    else {
      first = index;
      count = 1;
    }
    if (longest === null || count > longest.count) longest = { first, count };
  }
  if (longest === null) return null;
  return {
    channel,
    fromMs: series.timeMs[longest.first] ?? 0,
    hours: longest.count * series.hoursEach,
    value: values[longest.first] ?? 0,
  };
}

function meanDifference(series: LogSeries, second: LogChannel, first: LogChannel): number | null {
  const [a, b] = [series.channel(second), series.channel(first)];
  if (a === null || b === null) return null;
  let sum = 0;
  let count = 0;
  for (let index = 0; index < series.length; index++) {
    const difference = (a[index] ?? Number.NaN) - (b[index] ?? Number.NaN);
    if (Number.isNaN(difference)) continue;
    sum += difference;
    count++;
  }
  return meanOf(sum, count);
}
