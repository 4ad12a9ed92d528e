import { median } from "simple-statistics";

/**
 * The humidities that were read: how many, their sum, median and highest, and how many of them are dry and from 50 to 60 %.
 *
 * @param rh - Relative humidity, %, 0 to 100; NaN is a gap.
 * @param limitPct - Humidity limit of the job, % RH, 20 to 90.
 * @returns Sum, median and highest in %, counts of samples.
 * @see Counting; the median of an even number is the mean of the middle two (computed).
 */
export function counted(rh: Float64Array, limitPct: number) {
  const read: number[] = [];
  let dry = 0;
  let between = 0;
  let sum = 0;
  let highest = Number.NEGATIVE_INFINITY;
  for (let index = 0; index < rh.length; index++) {
    const value = rh[index] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    read.push(value);
    sum += value;
    if (value > highest) highest = value;
    if (value <= limitPct) dry++;
    if (value >= 50 && value <= 60) between++;
  }
  return {
    count: read.length,
    dry,
    between,
    sum,
    highest,
    median: read.length === 0 ? Number.NaN : median(read),
  };
}
