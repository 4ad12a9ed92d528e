import { ImpossibleStateError } from "../errors";
import { requireRange } from "../units";

/** What a log may hold, in inch-pound units. Shares are parts of the interval, 0 to 1. */
export const LOG_CHANNELS = [
  "indoorF",
  "indoorRhPct",
  /** A second sensor in the same room, to check the first against. */
  "secondIndoorF",
  "secondIndoorRhPct",
  "outdoorF",
  "outdoorRhPct",
  "outdoorDewPointF",
  "setpointF",
  "firstStageShare",
  "secondStageShare",
  "fanShare",
  "auxiliaryShare",
] as const;
export type LogChannel = (typeof LOG_CHANNELS)[number];

/**
 * A log as columns: element i of every array belongs to the interval that begins at `timeMs[i]`.
 * NaN in a channel is a gap; it never leaves the analysis as a number.
 */
export type LogSamples = {
  /** Milliseconds since 1970 UTC, strictly rising. */
  readonly timeMs: Float64Array;
  /** Minutes the house's clock was ahead of UTC, one a sample. */
  readonly utcOffsetMin: Int16Array;
  /** Usual distance of two samples, min. 1 to 60. */
  readonly intervalMin: number;
  readonly channels: { readonly [K in LogChannel]?: Float64Array };
};

/** Lowest and highest reading a channel may hold, with its unit. */
export const LOG_RANGES: { readonly [K in LogChannel]: readonly [number, number, string] } = {
  indoorF: [30, 130, "°F"],
  indoorRhPct: [0, 100, "%"],
  secondIndoorF: [30, 130, "°F"],
  secondIndoorRhPct: [0, 100, "%"],
  outdoorF: [-60, 140, "°F"],
  outdoorRhPct: [0, 100, "%"],
  outdoorDewPointF: [-80, 100, "°F"],
  setpointF: [40, 100, "°F"],
  firstStageShare: [0, 1, "share"],
  secondStageShare: [0, 1, "share"],
  fanShare: [0, 1, "share"],
  auxiliaryShare: [0, 1, "share"],
};

/**
 * Refuses samples that are not what {@link LogSamples} promises, naming the channel and the sample.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function requireLogSamples(samples: LogSamples): void {
  requireRange("intervalMin", samples.intervalMin, "min", 1, 60);
  const { length } = samples.timeMs;
  if (length === 0) throw new ImpossibleStateError("The log has no samples.", ["timeMs"]);
  if (samples.utcOffsetMin.length !== length)
    throw unequal("utcOffsetMin", samples.utcOffsetMin.length, length);
  let previous = Number.NEGATIVE_INFINITY;
  for (let index = 0; index < length; index++) {
    const time = samples.timeMs[index] ?? Number.NaN;
    if (!(time > previous && Math.abs(time) < 8.64e15)) {
      throw new ImpossibleStateError(`timeMs[${index}] does not rise; sort the log and drop doubles.`, [
        "timeMs",
      ]);
    }
    previous = time;
  }
  for (const channel of LOG_CHANNELS) {
    const values = samples.channels[channel];
    if (values === undefined) continue;
    if (values.length !== length) throw unequal(channel, values.length, length);
    const [min, max, unit] = LOG_RANGES[channel];
    for (let index = 0; index < length; index++) {
      const value = values[index] ?? Number.NaN;
      if (!Number.isNaN(value) && !(value >= min && value <= max)) {
        requireRange(`${channel}[${index}]`, value, unit, min, max);
      }
    }
  }
}

function unequal(field: string, found: number, expected: number): ImpossibleStateError {
  return new ImpossibleStateError(
    `${field} has ${found} elements and timeMs ${expected}; they have to be equal.`,
    [field, "timeMs"],
  );
}
