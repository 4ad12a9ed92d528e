import type { LogSeries } from "./log-series";
import type { Run } from "./runs";

/** Change of indoor moisture through cooling runs, gr/lb an hour, after the coil had time to get wet. */
export type MoistureInRuns = { readonly runs: number; readonly meanGrainsPerLbPerH: number };

const LONG_RUN_MIN = 20;
/** A coil needs about this long to get cold and wet (common practice, no source). */
const COIL_WET_MIN = 10;
const GRAINS_PER_LB = 7_000;

/** Mean over the runs of 20 min and more; null without any or without indoor moisture. */
export function moistureInRuns(series: LogSeries, runs: readonly Run[]): MoistureInRuns | null {
  const moisture = series.indoorHumidityRatio;
  if (moisture === null) return null;
  const settle = Math.ceil(COIL_WET_MIN / series.intervalMin);
  let [count, sum] = [0, 0];
  for (const { minutes, lastIndex, startKnown, endKnown } of runs) {
    if (minutes < LONG_RUN_MIN || !startKnown || !endKnown) continue;
    const first = lastIndex - Math.floor(minutes / series.intervalMin) + settle;
    const hours = (lastIndex - first) * series.hoursEach;
    const change = (moisture[lastIndex] ?? Number.NaN) - (moisture[first] ?? Number.NaN);
    if (!(hours > 0) || Number.isNaN(change)) continue;
    count++;
    sum += (change * GRAINS_PER_LB) / hours;
  }
  return count === 0 ? null : { runs: count, meanGrainsPerLbPerH: sum / count };
}
