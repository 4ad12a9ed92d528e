import { mean, quantile } from "simple-statistics";
import { type AfterRun, afterRun } from "./after-run";
import { byClockHour } from "./clock-hours";
import { type LogSeries, meanOf } from "./log-series";
import { type MoistureInRuns, moistureInRuns } from "./moisture-in-runs";
import { type Run, runsOf } from "./runs";

export type Lengths = {
  readonly count: number;
  readonly meanMin: number;
  readonly medianMin: number;
  readonly shortestMin: number;
  readonly longestMin: number;
};

/** How many runs had one length. */
export type RunLength = { readonly minutes: number; readonly runs: number };

export type RunningAnalysis = {
  /** Hours in which cooling is known, on or off. */
  readonly hours: number;
  readonly coolingHours: number;
  /** Cooling hours over hours, 0 to 1. */
  readonly duty: number;
  readonly starts: number;
  /** Starts an hour, over the clock hours that had some cooling; null without any. */
  readonly cyclesPerHour: number | null;
  /** Starts an hour over clock hours running 40 to 60 %: the most this thermostat makes (Nmax). Null with fewer than 10. */
  readonly cyclesPerHourAtHalf: number | null;
  /** Runs whose beginning and end are both in the log; null for none. */
  readonly runs: Lengths | null;
  /** Their lengths to a tenth of a minute, shortest first, each with how many there were. */
  readonly runLengths: readonly RunLength[];
  /** Share of those runs shorter than 5, 10, 20 and 60 min. */
  readonly runsShorterThan: readonly { readonly minutes: number; readonly share: number }[];
  /** Pauses between two runs; null for none. */
  readonly rests: Lengths | null;
  /** Second-stage time over cooling time, 0 to 1; null without a second-stage column or cooling. */
  readonly secondStageShare: number | null;
  readonly fanHours: number | null;
  /** Fan with no compressor; null without a fan column. */
  readonly fanOnlyHours: number | null;
  readonly auxiliaryHours: number | null;
  readonly afterRun: AfterRun;
  /** How indoor moisture moves through long runs; null without such runs or indoor readings. */
  readonly moistureInRuns: MoistureInRuns | null;
};

const SHORTER_THAN = [5, 10, 20, 60];

/** What the log says about the compressor and fan; null when it has no stage column or no reading in it. */
export function runningAnalysis(series: LogSeries): RunningAnalysis | null {
  const cooling = series.coolingShare;
  if (cooling === null) return null;
  const known = sumAndCount(cooling);
  if (known.count === 0) return null;
  const runs = runsOf(series, cooling);
  const whole = runs
    .filter(({ startKnown, endKnown }) => startKnown && endKnown)
    .map(({ minutes }) => minutes);
  const runLengths = countLengths(whole);
  const coolingHours = known.sum * series.hoursEach;
  const hourly = byClockHour(series, cooling, runs);
  return {
    hours: known.count * series.hoursEach,
    coolingHours,
    duty: known.sum / known.count,
    starts: runs.length,
    ...hourly,
    runs: lengthsOf(whole),
    runLengths,
    runsShorterThan: SHORTER_THAN.flatMap((minutes) => {
      const share = shareShorterThan(runLengths, minutes);
      return share === null ? [] : [{ minutes, share }];
    }),
    rests: lengthsOf(restsOf(runs)),
    secondStageShare: secondStageShare(series, cooling),
    fanHours: hoursOf(series, "fanShare"),
    fanOnlyHours: fanOnlyHours(series, cooling),
    auxiliaryHours: hoursOf(series, "auxiliaryShare"),
    afterRun: afterRun(series, runs),
    moistureInRuns: moistureInRuns(series, runs),
  };
}

/**
 * Share of the runs shorter than some minutes, 0 to 1; null without runs.
 *
 * @param runLengths - Run lengths, min, 0 or more each, with their counts.
 * @param minutes - Length asked about, min, 0 or more.
 * @returns Share, 0 to 1.
 * @see Counting (computed).
 */
export function shareShorterThan(runLengths: readonly RunLength[], minutes: number): number | null {
  const count = (of: readonly RunLength[]) => of.reduce((sum, { runs }) => sum + runs, 0);
  return meanOf(count(runLengths.filter((one) => one.minutes < minutes)), count(runLengths));
}

function countLengths(lengthsMin: readonly number[]): readonly RunLength[] {
  const counts = new Map<number, number>();
  for (const length of lengthsMin) {
    const minutes = Math.round(length * 10) / 10;
    counts.set(minutes, (counts.get(minutes) ?? 0) + 1);
  }
  return [...counts].sort(([a], [b]) => a - b).map(([minutes, runs]) => ({ minutes, runs }));
}

function sumAndCount(values: Float64Array): { readonly sum: number; readonly count: number } {
  let sum = 0;
  let count = 0;
  for (let index = 0; index < values.length; index++) {
    const value = values[index] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    sum += value;
    count++;
  }
  return { sum, count };
}

/** Over the intervals in which both are known; less than a minute of cooling has no shares. */
function secondStageShare(series: LogSeries, cooling: Float64Array): number | null {
  const second = series.channel("secondStageShare");
  if (second === null) return null;
  let high = 0;
  let all = 0;
  for (let index = 0; index < series.length; index++) {
    const [one, on] = [second[index] ?? Number.NaN, cooling[index] ?? Number.NaN];
    if (Number.isNaN(one) || Number.isNaN(on)) continue;
    high += one;
    all += on;
  }
  return all * series.intervalMin < 1 ? null : high / all;
}

function hoursOf(series: LogSeries, channel: "fanShare" | "auxiliaryShare"): number | null {
  const values = series.channel(channel);
  if (values === null) return null;
  const { sum, count } = sumAndCount(values);
  return count === 0 ? null : sum * series.hoursEach;
}

function fanOnlyHours(series: LogSeries, cooling: Float64Array): number | null {
  const fan = series.channel("fanShare");
  if (fan === null) return null;
  const alone = fan.map((value, index) => Math.max(0, value - (cooling[index] ?? Number.NaN)));
  const { sum, count } = sumAndCount(alone);
  return count === 0 ? null : sum * series.hoursEach;
}

function restsOf(runs: readonly Run[]): readonly number[] {
  return runs.flatMap((run, index) => {
    const before = runs[index - 1];
    if (before === undefined || before.stretch !== run.stretch || !before.endKnown || !run.startKnown)
      return [];
    return [(run.startMs - before.endMs) / 60_000];
  });
}

function lengthsOf(minutes: readonly number[]): Lengths | null {
  if (minutes.length === 0) return null;
  const all = [...minutes];
  return {
    count: all.length,
    meanMin: mean(all),
    medianMin: quantile(all, 0.5),
    shortestMin: quantile(all, 0),
    longestMin: quantile(all, 1),
  };
}
