import { requireRange } from "../units";
import { runEnds } from "./after-run";
import { type LogSeries, logSeries, meanOf } from "./log-series";
import { type LogSamples, requireLogSamples } from "./samples";

/** Mean humidity of one hour of the day in one month of the house's clock. */
export type HourOfMonth = {
  /** Months since January 1970. */
  readonly month: number;
  readonly hour: number;
  readonly meanRhPct: number;
  readonly hours: number;
};

/** Share of an hour of the day that each stage and the fan run, 0 to 1. */
export type StagesOfHour = {
  readonly hour: number;
  readonly first: number | null;
  readonly second: number | null;
  readonly fanAlone: number | null;
};

/** Mean change of indoor moisture since the end of a run, gr/lb. */
export type AfterCyclePoint = {
  readonly minutes: number;
  readonly fanOnGrainsPerLb: number | null;
  readonly fanOnRuns: number;
  readonly fanOffGrainsPerLb: number | null;
  readonly fanOffRuns: number;
};

export type LogPictures = {
  readonly hourByMonth: readonly HourOfMonth[];
  readonly stagesByHour: readonly StagesOfHour[];
  readonly afterCycle: readonly AfterCyclePoint[];
};

const AFTER_MIN = 60;
const GRAINS_PER_LB = 7_000;

/**
 * What the pictures of a log draw, counted from its samples.
 *
 * @param samples - Rising times with inch-pound channels; NaN is a gap.
 * @param elevationFt - Height of the house, ft, −1,000 to 12,000.
 * @returns Groups with something read in them; empty where the log lacks the columns.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} naming what cannot be.
 * @see Counting and means (computed).
 */
export function logPictures(samples: LogSamples, elevationFt: number): LogPictures {
  requireRange("elevationFt", elevationFt, "ft", -1_000, 12_000);
  requireLogSamples(samples);
  const series = logSeries(samples, elevationFt);
  return {
    hourByMonth: hourByMonth(series),
    stagesByHour: stagesByHour(series),
    afterCycle: afterCycle(series),
  };
}

function hourByMonth(series: LogSeries): readonly HourOfMonth[] {
  const rh = series.channel("indoorRhPct");
  if (rh === null) return [];
  const groups = new Map<number, { sum: number; count: number }>();
  let [day, month] = [Number.NaN, 0];
  for (let index = 0; index < series.length; index++) {
    const value = rh[index] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    if (series.localDay[index] !== day) {
      day = series.localDay[index] ?? 0;
      const date = new Date(day * 86_400_000);
      month = (date.getUTCFullYear() - 1970) * 12 + date.getUTCMonth();
    }
    const key = month * 24 + (series.localHour[index] ?? 0);
    const group = groups.get(key) ?? { sum: 0, count: 0 };
    group.sum += value;
    group.count++;
    groups.set(key, group);
  }
  return [...groups]
    .sort(([a], [b]) => a - b)
    .map(([key, { sum, count }]) => ({
      month: Math.floor(key / 24),
      hour: key - 24 * Math.floor(key / 24),
      meanRhPct: sum / count,
      hours: count * series.hoursEach,
    }));
}

function stagesByHour(series: LogSeries): readonly StagesOfHour[] {
  const cooling = series.coolingShare;
  if (cooling === null) return [];
  const second = series.channel("secondStageShare");
  const fan = series.channel("fanShare");
  const one = () => Array.from({ length: 24 }, () => ({ sum: 0, count: 0 }));
  const sums = { first: one(), second: one(), fanAlone: one() };
  const add = (group: { sum: number; count: number } | undefined, value: number) => {
    if (group === undefined || Number.isNaN(value)) return;
    group.sum += value;
    group.count++;
  };
  for (let index = 0; index < series.length; index++) {
    const hour = series.localHour[index] ?? 0;
    const on = cooling[index] ?? Number.NaN;
    const high = second === null ? 0 : (second[index] ?? Number.NaN);
    add(sums.first[hour], Math.max(0, on - high));
    if (second !== null) add(sums.second[hour], high);
    if (fan !== null) add(sums.fanAlone[hour], Math.max(0, (fan[index] ?? Number.NaN) - on));
  }
  const mean = (group: { sum: number; count: number } | undefined) =>
    group === undefined ? null : meanOf(group.sum, group.count);
  return Array.from({ length: 24 }, (_, hour) => ({
    hour,
    first: mean(sums.first[hour]),
    second: mean(sums.second[hour]),
    fanAlone: mean(sums.fanAlone[hour]),
  }));
}

function afterCycle(series: LogSeries): readonly AfterCyclePoint[] {
  const moisture = series.indoorHumidityRatio;
  const ends = runEnds(series);
  if (moisture === null || ends.length === 0) return [];
  const steps = Math.max(1, Math.round(AFTER_MIN / series.intervalMin));
  const sums = Array.from({ length: steps + 1 }, () => ({
    on: { sum: 0, runs: 0 },
    off: { sum: 0, runs: 0 },
  }));
  for (const { lastIndex, fan } of ends) {
    for (const [step, sum] of sums.entries()) {
      const at = lastIndex + step;
      // The rest of a run's hour ends with the next run or with missing time.
      if (at >= series.length || (step > 0 && series.afterGap[at] === 1)) break;
      if (step > 0 && !((series.coolingShare?.[at] ?? Number.NaN) < 0.01)) break;
      const change = ((moisture[at] ?? Number.NaN) - (moisture[lastIndex] ?? Number.NaN)) * GRAINS_PER_LB;
      if (Number.isNaN(change)) continue;
      sum[fan].sum += change;
      sum[fan].runs++;
    }
  }
  return sums.map(({ on, off }, step) => ({
    minutes: step * series.intervalMin,
    fanOnGrainsPerLb: meanOf(on.sum, on.runs),
    fanOnRuns: on.runs,
    fanOffGrainsPerLb: meanOf(off.sum, off.runs),
    fanOffRuns: off.runs,
  }));
}
