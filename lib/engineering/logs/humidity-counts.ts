/**
 * The humidities that were read, in rising order, their sum, and how many of them are dry and from 50 to 60 %.
 *
 * @param rh - Relative humidity, %, 0 to 100; NaN is a gap.
 * @param limitPct - Humidity limit of the job, % RH, 20 to 90.
 * @returns Humidities and their sum in %, counts of samples.
 * @see Counting (computed).
 */
export function counted(rh: Float64Array, limitPct: number) {
  const read = new Float64Array(rh.length);
  let count = 0;
  let dry = 0;
  let between = 0;
  let sum = 0;
  for (let index = 0; index < rh.length; index++) {
    const value = rh[index] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    read[count++] = value;
    sum += value;
    if (value <= limitPct) dry++;
    if (value >= 50 && value <= 60) between++;
  }
  return { read: read.subarray(0, count).sort(), dry, between, sum };
}
