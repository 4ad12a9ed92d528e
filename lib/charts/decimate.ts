/** A series thinned to buckets of equal time: the lowest and highest reading in each, so that no peak is lost. */
export type Thinned = {
  /** Middle of each bucket, ms. */
  readonly atMs: readonly number[];
  /** Per channel the lowest and highest reading of each bucket, `null` where it has none. */
  readonly channels: {
    readonly [channel: string]: {
      readonly low: readonly (number | null)[];
      readonly high: readonly (number | null)[];
    };
  };
};

/**
 * Thins columns to at most `most` buckets between two instants. With no more samples than buckets every sample is its own.
 * Values are rounded to hundredths: they are for drawing.
 */
export function thinned(
  timeMs: Float64Array,
  channels: Readonly<Record<string, Float64Array | null | undefined>>,
  range: { readonly fromMs: number; readonly toMs: number; readonly most: number },
): Thinned {
  const first = lowerBound(timeMs, range.fromMs);
  const end = lowerBound(timeMs, range.toMs + 1);
  const each = Math.max(1, (range.toMs - range.fromMs) / range.most);
  const isRaw = end - first <= range.most;
  const starts: number[] = [];
  let bucket = -1;
  for (let index = first; index < end; index++) {
    const now = isRaw ? index : Math.floor(((timeMs[index] ?? 0) - range.fromMs) / each);
    if (now !== bucket) starts.push(index);
    bucket = now;
  }
  const ends = [...starts.slice(1), end];
  return {
    atMs: starts.map((start, index) => {
      const last = (ends[index] ?? end) - 1;
      return Math.round(((timeMs[start] ?? 0) + (timeMs[last] ?? 0)) / 2);
    }),
    channels: Object.fromEntries(
      Object.entries(channels).flatMap(([name, values]) =>
        values ? [[name, extremes(values, starts, ends)]] : [],
      ),
    ),
  };
}

function extremes(values: Float64Array, starts: readonly number[], ends: readonly number[]) {
  const low: (number | null)[] = [];
  const high: (number | null)[] = [];
  for (const [at, start] of starts.entries()) {
    let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (let index = start; index < (ends[at] ?? start); index++) {
      const value = values[index] ?? Number.NaN;
      if (value < least) least = value;
      if (value > most) most = value;
    }
    low.push(least > most ? null : hundredth(least));
    high.push(least > most ? null : hundredth(most));
  }
  return { low, high };
}

const hundredth = (value: number) => Math.round(value * 100) / 100;

function lowerBound(sorted: Float64Array, value: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] ?? 0) < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
