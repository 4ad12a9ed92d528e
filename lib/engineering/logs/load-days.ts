import type { LogSeries } from "./log-series";

/** One day: mean outdoor temperature and mean sensible cooling delivered, and the same of its hours. */
export type LoadDay = {
  readonly localDay: number;
  readonly outdoorF: number;
  readonly sensibleBtuh: number;
  /** Mean of the day's hottest hour outdoors, °F. */
  readonly hottestHourF: number;
  /** Mean sensible cooling of each hour of the house's clock, Btu/h; NaN where the hour was not read. */
  readonly hourlyBtuh: readonly number[];
};

const LEAST_COVERED_SHARE = 0.9;
/** A day with less running than this is not on the line but at its foot. */
const LEAST_DUTY = 0.02;

type Sums = { count: number; outdoor: number; heat: number; share: number };
type DaySums = { readonly hours: readonly Sums[] };

/**
 * Days of the house's clock with nearly all samples read and some cooling.
 *
 * @param capacities - Sensible capacity delivered by each stage, first stage first, Btu/h. 1 to 500,000.
 * @returns Days in order, temperatures in °F and cooling in Btu/h; none without stages or outdoor temperature.
 * @see Counting and means (computed).
 */
export function loadDays(series: LogSeries, capacities: readonly number[]): readonly LoadDay[] {
  const outdoorF = series.channel("outdoorF");
  const cooling = series.coolingShare;
  if (outdoorF === null || cooling === null) return [];
  const second = series.channel("secondStageShare");
  const [firstBtuh = 0, secondBtuh = firstBtuh] = capacities;
  const days = new Map<number, DaySums>();
  for (let index = 0; index < series.length; index++) {
    const [out, on] = [outdoorF[index] ?? Number.NaN, cooling[index] ?? Number.NaN];
    const high = second === null ? 0 : (second[index] ?? Number.NaN);
    if (Number.isNaN(out) || Number.isNaN(on) || Number.isNaN(high)) continue;
    const key = series.localDay[index] ?? 0;
    let day = days.get(key);
    if (day === undefined) {
      day = { hours: Array.from({ length: 24 }, () => ({ count: 0, outdoor: 0, heat: 0, share: 0 })) };
      days.set(key, day);
    }
    const hour = day.hours[series.localHour[index] ?? 0];
    if (hour === undefined) continue;
    hour.count++;
    hour.outdoor += out;
    hour.share += on;
    hour.heat += Math.max(0, on - high) * firstBtuh + high * secondBtuh;
  }
  return [...days].flatMap(([localDay, sums]) => dayOf(localDay, sums, series.hoursEach));
}

function dayOf(localDay: number, { hours }: DaySums, hoursEach: number): readonly LoadDay[] {
  const day = { count: 0, outdoor: 0, heat: 0, share: 0 };
  for (const hour of hours) {
    day.count += hour.count;
    day.outdoor += hour.outdoor;
    day.heat += hour.heat;
    day.share += hour.share;
  }
  if (day.count < LEAST_COVERED_SHARE * (24 / hoursEach) || day.share / day.count < LEAST_DUTY) return [];
  const read = (hour: Sums) => hour.count >= LEAST_COVERED_SHARE / hoursEach;
  return [
    {
      localDay,
      outdoorF: day.outdoor / day.count,
      sensibleBtuh: day.heat / day.count,
      hottestHourF: Math.max(...hours.map((hour) => (read(hour) ? hour.outdoor / hour.count : -Infinity))),
      hourlyBtuh: hours.map((hour) => (read(hour) ? hour.heat / hour.count : Number.NaN)),
    },
  ];
}
