import { type LogSeries, meanOf } from "./log-series";

/** Hours and what the house was like in them. Null where nothing was read. */
export type HumidityGroup = {
  readonly hours: number;
  readonly meanRhPct: number | null;
  readonly meanDewPointF: number | null;
  /** Share of the hours above the limit, 0 to 1. */
  readonly wetShare: number | null;
};

/**
 * Groups the samples with a humidity reading by a whole number.
 *
 * @param rh - Indoor relative humidity, %, 0 to 100; NaN is a gap.
 * @param limitPct - Humidity limit of the job, % RH, 20 to 90.
 * @param keys - The number of each sample's group, a whole number, −1,000 to 1,000; NaN for none.
 * @returns Groups in rising order of their number, with hours, means in % and °F, and the share above the limit, 0 to 1.
 * @see Counting and means (computed).
 */
export function groupsOf(
  series: LogSeries,
  rh: Float64Array,
  limitPct: number,
  keys: ArrayLike<number>,
): readonly (readonly [number, HumidityGroup])[] {
  type Sums = { count: number; rh: number; wet: number; dew: number; dewCount: number };
  const groups = new Map<number, Sums>();
  const dewPointF = series.indoorDewPointF;
  // Neighbours are mostly of one group.
  let [last, one]: [number, Sums | undefined] = [Number.NaN, undefined];
  for (let index = 0; index < series.length; index++) {
    const value = rh[index] ?? Number.NaN;
    const key = keys[index] ?? Number.NaN;
    if (Number.isNaN(value) || Number.isNaN(key)) continue;
    if (key !== last || one === undefined) {
      last = key;
      one = groups.get(key);
      if (one === undefined) {
        one = { count: 0, rh: 0, wet: 0, dew: 0, dewCount: 0 };
        groups.set(key, one);
      }
    }
    one.count++;
    one.rh += value;
    if (value > limitPct) one.wet++;
    const dew = dewPointF === null ? Number.NaN : (dewPointF[index] ?? Number.NaN);
    if (Number.isNaN(dew)) continue;
    one.dew += dew;
    one.dewCount++;
  }
  return [...groups]
    .sort(([a], [b]) => a - b)
    .map(([key, found]): readonly [number, HumidityGroup] => [
      key,
      {
        hours: found.count * series.hoursEach,
        meanRhPct: meanOf(found.rh, found.count),
        meanDewPointF: meanOf(found.dew, found.dewCount),
        wetShare: meanOf(found.wet, found.count),
      },
    ]);
}

/**
 * In which step each sample's dew point lies.
 *
 * @param dewPointF - °F, −100 to 150; NaN is a gap, null a log without.
 * @param stepF - Width of a step, °F, above 0.
 * @returns Whole numbers of steps; NaN in a gap.
 * @see Counting (computed).
 */
export function stepsOf(dewPointF: Float64Array | null, stepF: number): Float64Array {
  const steps = new Float64Array(dewPointF?.length ?? 0);
  for (let index = 0; index < steps.length; index++)
    steps[index] = Math.floor((dewPointF?.[index] ?? Number.NaN) / stepF);
  return steps;
}
