import { daysAwayFromRoom } from "./away-from-room";
import { type LogSeries, meanOf } from "./log-series";
import type { LogChannel } from "./samples";

export type StillStretch = {
  readonly channel: LogChannel;
  readonly fromMs: number;
  readonly hours: number;
  readonly value: number;
  /** Smallest step between two readings of that sensor; null when it never moved. */
  readonly step: number | null;
};

/**
 * Loggers that write whole percent may well write the same for a day: of those a week tells. A thermostat that reads whole degrees
 * holds the room to that very reading: there no time tells.
 */
const COARSE_STEP = 0.75;
const COARSE_TIMES = 7;

/**
 * How long a sensor has to read the same to be called stuck.
 *
 * @param still - Its longest stretch of one reading, with the step of its readings in °F or %.
 * @param stuckAfterH - Limit for a sensor that reads tenths, h, above 0.
 * @returns Hours; infinite where no time tells.
 * @see common practice, no source.
 */
export function stuckAfter({ channel, step, value }: StillStretch, stuckAfterH: number): number {
  const isRoom = channel === "indoorF";
  const isCoarse = step === null ? isRoom && Number.isInteger(value) : step >= COARSE_STEP;
  if (!isCoarse) return stuckAfterH;
  return isRoom ? Number.POSITIVE_INFINITY : COARSE_TIMES * stuckAfterH;
}

export type SensorAnalysis = {
  /** The longest time each sensor read the very same, gaps aside. */
  readonly longestStill: readonly StillStretch[];
  /** Days on which the indoor sensor cannot have hung in the thermostat's room; null without indoor temperature. */
  readonly awayFromRoomDays: number | null;
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
    awayFromRoomDays: daysAwayFromRoom(series),
    secondMinusFirstF: meanDifference(series, "secondIndoorF", "indoorF"),
    secondMinusFirstRhPct: meanDifference(series, "secondIndoorRhPct", "indoorRhPct"),
  };
}

function longestStill(series: LogSeries, channel: LogChannel, values: Float64Array): StillStretch | null {
  let longest: { first: number; count: number } | null = null;
  let first = 0;
  let count = 0;
  let step = Number.POSITIVE_INFINITY;
  for (let index = 0; index < series.length; index++) {
    const value = values[index] ?? Number.NaN;
    const moved = Math.abs(value - (values[index - 1] ?? Number.NaN));
    if (moved > 0 && moved < step) step = moved;
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
    step: Number.isFinite(step) ? step : null,
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
