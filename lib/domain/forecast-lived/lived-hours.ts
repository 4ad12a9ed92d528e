import type { LogSamples } from "@/lib/engineering/logs";
import { logSeries } from "@/lib/engineering/logs/log-series";

const HOUR_MS = 3_600_000;
/** An hour counts with at least this share of its readings. */
const LEAST_COVERED = 0.5;

/** What the house did, one element an hour; NaN where the log tells too little of it. */
export type LivedHours = {
  readonly roomF: Float64Array;
  readonly rhPct: Float64Array;
  readonly wetMinutes: Float64Array;
  /** `null` without stage columns. */
  readonly runMinutes: Float64Array | null;
};

/** A log by the hour, from an instant on, as the year's loop gives its hours. */
export function livedHours(
  samples: LogSamples,
  elevationFt: number,
  humidityLimitPct: number,
  firstMs: number,
  hours: number,
): LivedHours {
  const series = logSeries(samples, elevationFt);
  const [indoorF, rhPct] = [series.channel("indoorF"), series.channel("indoorRhPct")];
  const mean = (column: Float64Array | null, of: (value: number) => number): Float64Array => {
    const sums = new Float64Array(hours);
    const counts = new Float64Array(hours);
    for (let place = 0; place < series.length; place++) {
      const hour = Math.floor(((series.timeMs[place] ?? 0) - firstMs) / HOUR_MS);
      const value = column?.[place] ?? Number.NaN;
      if (hour < 0 || hour >= hours || Number.isNaN(value)) continue;
      sums[hour] = (sums[hour] ?? 0) + of(value);
      counts[hour] = (counts[hour] ?? 0) + 1;
    }
    const least = LEAST_COVERED / series.hoursEach;
    return sums.map((sum, hour) => {
      const count = counts[hour] ?? 0;
      return count > 0 && count >= least ? sum / count : Number.NaN;
    });
  };
  const asRead = (value: number) => value;
  return {
    roomF: mean(indoorF, asRead),
    rhPct: mean(rhPct, asRead),
    wetMinutes: mean(rhPct, (value) => (value > humidityLimitPct ? 60 : 0)),
    runMinutes: series.coolingShare === null ? null : mean(series.coolingShare, (share) => 60 * share),
  };
}
