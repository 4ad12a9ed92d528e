import { logAir } from "@/lib/engineering/logs/log-air";
import { type FitFactors, type HouseModel, houseWithFactors } from "@/lib/engineering/simulation";
import { freeRun } from "@/lib/engineering/simulation/free-run";
import type { HouseLogAnswer } from "./house-log";
import type { FitPicture } from "./kept";

const HOUR_MS = 3_600_000;
/** So many hours are drawn, the last of the log. */
const MOST_HOURS = 28 * 24;
const MASS_RATIO = 0.621945;

/** Measured dew points beside those of the house as assumed and as fitted, carried along by what the system took out. */
export function fitPicture(
  house: HouseModel,
  factors: FitFactors,
  { log, timeMs }: Extract<HouseLogAnswer, { ok: true }>,
  elevationFt: number,
): FitPicture {
  const length = log.indoorF.length;
  const ratios = (as: HouseModel): Float64Array => {
    const ratio = new Float64Array(length);
    freeRun(as, log, new Float64Array(length), ratio);
    return ratio;
  };
  const lastMs = timeMs.at(-1) ?? 0;
  const beginMs = Math.max(timeMs[0] ?? 0, lastMs - MOST_HOURS * HOUR_MS);
  const firstMs = Math.floor(beginMs / HOUR_MS) * HOUR_MS;
  const hours = Math.floor((lastMs - firstMs) / HOUR_MS) + 1;
  const air = logAir(elevationFt);
  const byHour = (column: Float64Array): readonly (number | null)[] => {
    const sums = new Float64Array(hours);
    const counts = new Float64Array(hours);
    for (let place = 0; place < length; place++) {
      const hour = Math.floor(((timeMs[place] ?? 0) - firstMs) / HOUR_MS);
      if (hour < 0) continue;
      sums[hour] = (sums[hour] ?? 0) + (column[place] ?? 0);
      counts[hour] = (counts[hour] ?? 0) + 1;
    }
    return Array.from(sums, (sum, hour) => {
      const ratio = sum / (counts[hour] ?? 0);
      const dewPointF = air.dewPointF((log.pressurePsia * ratio) / (MASS_RATIO + ratio));
      return Number.isFinite(dewPointF) ? Math.round(10 * dewPointF) / 10 : null;
    });
  };
  return {
    firstMs,
    measuredF: byHour(log.indoorRatio),
    assumedF: byHour(ratios(house)),
    fittedF: byHour(ratios(houseWithFactors(house, factors))),
  };
}
