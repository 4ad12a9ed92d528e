import { logSeries } from "./log-series";
import type { LogSamples } from "./samples";

/**
 * Dew points of a log for drawing.
 *
 * @param samples - Checked samples, as the analysis takes them.
 * @param elevationFt - Height of the house, ft, −1,000 to 12,000.
 * @returns Dew points, °F, NaN in a gap; null where the log lacks the columns.
 * @throws {@link OutOfRangeError} for an elevation outside its range.
 * @see Moist air: ASHRAE Handbook, Fundamentals 2017, ch. 1 (published), as in `air`.
 */
export function logMoisture(samples: LogSamples, elevationFt: number) {
  const { indoorDewPointF, outdoorDewPointF } = logSeries(samples, elevationFt);
  return { indoorDewPointF, outdoorDewPointF };
}
