import { ImpossibleStateError } from "../errors";
import { LOG_CHANNELS, type LogChannel, type LogSamples } from "./samples";

/**
 * Two files of one logger as one log. An instant both hold is kept once; there the newer file's reading counts, and the
 * older one's where the newer has none.
 *
 * @param older - What is kept already.
 * @param newer - What comes.
 * @returns The merged log and how many instants both held.
 * @throws {@link ImpossibleStateError} when their intervals differ: no run length would hold across both.
 * @see Set union (computed).
 */
export function mergeSamples(
  older: LogSamples,
  newer: LogSamples,
): { readonly samples: LogSamples; readonly overlap: number } {
  if (older.intervalMin !== newer.intervalMin) {
    throw new ImpossibleStateError(
      `This file's samples are ${newer.intervalMin} min apart, those kept for this logger ${older.intervalMin} min. Give the file a logger name of its own.`,
      ["intervalMin"],
    );
  }
  const most = older.timeMs.length + newer.timeMs.length;
  const timeMs = new Float64Array(most);
  const utcOffsetMin = new Int16Array(most);
  const fromOlder = new Int32Array(most);
  const fromNewer = new Int32Array(most);
  let count = 0;
  for (let a = 0, b = 0; a < older.timeMs.length || b < newer.timeMs.length; count++) {
    const [left, right] = [
      older.timeMs[a] ?? Number.POSITIVE_INFINITY,
      newer.timeMs[b] ?? Number.POSITIVE_INFINITY,
    ];
    timeMs[count] = Math.min(left, right);
    utcOffsetMin[count] = (right <= left ? newer.utcOffsetMin[b] : older.utcOffsetMin[a]) ?? 0;
    fromOlder[count] = left <= right ? a++ : -1;
    fromNewer[count] = right <= left ? b++ : -1;
  }
  const channels: { [K in LogChannel]?: Float64Array } = {};
  for (const channel of LOG_CHANNELS) {
    const [before, after] = [older.channels[channel], newer.channels[channel]];
    if (before === undefined && after === undefined) continue;
    const values = new Float64Array(count);
    for (let index = 0; index < count; index++) {
      const value = after?.[fromNewer[index] ?? -1] ?? Number.NaN;
      values[index] = Number.isNaN(value) ? (before?.[fromOlder[index] ?? -1] ?? Number.NaN) : value;
    }
    channels[channel] = values;
  }
  return {
    samples: {
      timeMs: timeMs.slice(0, count),
      utcOffsetMin: utcOffsetMin.slice(0, count),
      intervalMin: newer.intervalMin,
      channels,
    },
    overlap: most - count,
  };
}
