import type { LogSeries } from "./log-series";
import { type Run, runsOf } from "./runs";

/** How indoor moisture moved in the quarter hour after a run, gr/lb, by what the fan did. */
export type AfterRun = {
  readonly fanOn: { readonly runs: number; readonly meanRiseGrainsPerLb: number } | null;
  readonly fanOff: { readonly runs: number; readonly meanRiseGrainsPerLb: number } | null;
};

/** A run's end after which nothing ran for a quarter hour, and what the fan did in it. */
type RunEnd = { readonly lastIndex: number; readonly lastAfter: number; readonly fan: "on" | "off" };

const AFTER_RUN_MIN = 15;
const GRAINS_PER_LB = 7_000;

/** Ends of runs with a quiet, unbroken quarter hour after them, and the fan clearly on or off in it. */
export function runEnds(
  series: LogSeries,
  runs: readonly Run[] = series.coolingShare === null ? [] : runsOf(series, series.coolingShare),
): readonly RunEnd[] {
  const fan = series.channel("fanShare");
  if (fan === null) return [];
  const steps = Math.max(1, Math.round(AFTER_RUN_MIN / series.intervalMin));
  return runs.flatMap(({ lastIndex, endKnown }): readonly RunEnd[] => {
    const lastAfter = lastIndex + steps;
    if (!endKnown || lastAfter >= series.length) return [];
    let fanShare = 0;
    for (let index = lastIndex + 1; index <= lastAfter; index++) {
      const quiet = series.afterGap[index] === 0 && (series.coolingShare?.[index] ?? Number.NaN) < 0.01;
      if (!quiet) return [];
      fanShare += (fan[index] ?? Number.NaN) / steps;
    }
    const state = fanShare > 0.5 ? "on" : fanShare < 0.1 ? "off" : null;
    return state === null ? [] : [{ lastIndex, lastAfter, fan: state }];
  });
}

/** Indoor moisture a quarter hour after a run against its end, where nothing ran and nothing is missing between. */
export function afterRun(series: LogSeries, runs: readonly Run[]): AfterRun {
  const moisture = series.indoorHumidityRatio;
  if (moisture === null) return { fanOn: null, fanOff: null };
  const sums = { on: { runs: 0, rise: 0 }, off: { runs: 0, rise: 0 } };
  for (const { lastIndex, lastAfter, fan } of runEnds(series, runs)) {
    const rise = (moisture[lastAfter] ?? Number.NaN) - (moisture[lastIndex] ?? Number.NaN);
    if (Number.isNaN(rise)) continue;
    sums[fan].runs++;
    sums[fan].rise += rise * GRAINS_PER_LB;
  }
  const said = ({ runs: count, rise }: { runs: number; rise: number }) =>
    count === 0 ? null : { runs: count, meanRiseGrainsPerLb: rise / count };
  return { fanOn: said(sums.on), fanOff: said(sums.off) };
}
