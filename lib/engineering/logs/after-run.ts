import type { LogSeries } from "./log-series";
import type { Run } from "./runs";

/** How indoor moisture moved in the quarter hour after a run, gr/lb, by what the fan did. */
export type AfterRun = {
  readonly fanOn: { readonly runs: number; readonly meanRiseGrainsPerLb: number } | null;
  readonly fanOff: { readonly runs: number; readonly meanRiseGrainsPerLb: number } | null;
};

const AFTER_RUN_MIN = 15;
const GRAINS_PER_LB = 7_000;

/** Indoor moisture a quarter hour after a run against its end, where nothing ran and nothing is missing between. */
export function afterRun(series: LogSeries, runs: readonly Run[]): AfterRun {
  const moisture = series.indoorHumidityRatio;
  const fan = series.channel("fanShare");
  if (moisture === null || fan === null) return { fanOn: null, fanOff: null };
  const steps = Math.max(1, Math.round(AFTER_RUN_MIN / series.intervalMin));
  const sums = { on: { runs: 0, rise: 0 }, off: { runs: 0, rise: 0 } };
  for (const { lastIndex, endKnown } of runs) {
    const last = lastIndex + steps;
    if (!endKnown || last >= series.length) continue;
    let fanShare = 0;
    let idle = true;
    for (let index = lastIndex + 1; index <= last; index++) {
      idle &&= series.afterGap[index] === 0 && (series.coolingShare?.[index] ?? Number.NaN) < 0.01;
      fanShare += (fan[index] ?? Number.NaN) / steps;
    }
    const rise = (moisture[last] ?? Number.NaN) - (moisture[lastIndex] ?? Number.NaN);
    if (!idle || Number.isNaN(rise) || Number.isNaN(fanShare)) continue;
    const side = fanShare > 0.5 ? sums.on : fanShare < 0.1 ? sums.off : null;
    if (side === null) continue;
    side.runs++;
    side.rise += rise * GRAINS_PER_LB;
  }
  const said = ({ runs: count, rise }: { runs: number; rise: number }) =>
    count === 0 ? null : { runs: count, meanRiseGrainsPerLb: rise / count };
  return { fanOn: said(sums.on), fanOff: said(sums.off) };
}
