import { quantileSorted } from "simple-statistics";
import { ImpossibleStateError } from "../errors";
import { requireRange } from "../units";
import { logSeries } from "./log-series";
import { type LogSamples, requireLogSamples } from "./samples";

/** What can be laid upon itself day by day. */
export const OVERLAY_CHANNELS = ["indoorRhPct", "indoorDewPointF", "indoorF"] as const;
export type OverlayChannel = (typeof OVERLAY_CHANNELS)[number];

/** The days of a log upon each other by the house's clock; null is a time nothing was read in. */
export type DayOverlay = {
  /** Width of a step of the day, min. */
  readonly stepMin: number;
  /** Over all days, one a step. */
  readonly median: readonly (number | null)[];
  /** A tenth of the days lies below, a tenth above. */
  readonly low: readonly (number | null)[];
  readonly high: readonly (number | null)[];
  readonly days: readonly {
    /** Days since 1970 of the house's clock. */
    readonly localDay: number;
    readonly values: readonly (number | null)[];
  }[];
};

const STEP_MIN = 30;
const STEPS = (24 * 60) / STEP_MIN;

type Sums = { readonly localDay: number; readonly sum: Float64Array; readonly count: Uint16Array };

/**
 * Lays the days of a log upon each other: each day's mean by half hour of the house's clock, and over the days the median and the band
 * from the 10th to the 90th percentile. An hour that comes twice counts into its clock hour, one that is skipped is a gap.
 *
 * @param samples - Rising times with inch-pound channels; NaN is a gap.
 * @param elevationFt - Height of the house, ft, −1,000 to 12,000.
 * @param channel - What is laid upon itself.
 * @param span - From and to, ms since 1970, the end included. 0 and above.
 * @returns Days in order; none where the log lacks the columns or the span has no reading.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} naming what cannot be.
 * @see Percentiles by linear interpolation between the readings of a step, Hyndman and Fan 1996, type 7 (recalled).
 */
export function dayOverlay(
  samples: LogSamples,
  elevationFt: number,
  channel: OverlayChannel,
  span: { readonly fromMs: number; readonly toMs: number },
): DayOverlay {
  requireRange("elevationFt", elevationFt, "ft", -1_000, 12_000);
  requireLogSamples(samples);
  if (!(span.fromMs <= span.toMs))
    throw new ImpossibleStateError("The span ends before it begins.", ["fromMs", "toMs"]);
  const series = logSeries(samples, elevationFt);
  const values = channel === "indoorDewPointF" ? series.indoorDewPointF : series.channel(channel);
  const days: Sums[] = [];
  for (let index = 0; index < series.length; index++) {
    const now = series.timeMs[index] ?? 0;
    const value = values?.[index] ?? Number.NaN;
    if (now < span.fromMs || now > span.toMs || Number.isNaN(value)) continue;
    const localDay = series.localDay[index] ?? 0;
    let day = days.at(-1);
    if (day?.localDay !== localDay) {
      day = { localDay, sum: new Float64Array(STEPS), count: new Uint16Array(STEPS) };
      days.push(day);
    }
    const localMin = now / 60_000 + (samples.utcOffsetMin[index] ?? 0) - localDay * 24 * 60;
    const step = Math.min(STEPS - 1, Math.max(0, Math.floor(localMin / STEP_MIN)));
    day.sum[step] = (day.sum[step] ?? 0) + value;
    day.count[step] = (day.count[step] ?? 0) + 1;
  }
  const read = days.map(({ localDay, sum, count }) => ({
    localDay,
    values: Array.from(sum, (total, step) => (count[step] ? hundredth(total / (count[step] ?? 1)) : null)),
  }));
  const byStep = Array.from({ length: STEPS }, (_, step) =>
    read.flatMap((day) => day.values[step] ?? []).sort((a, b) => a - b),
  );
  const at = (share: number) =>
    byStep.map((sorted) => (sorted.length === 0 ? null : hundredth(quantileSorted(sorted, share))));
  return { stepMin: STEP_MIN, median: at(0.5), low: at(0.1), high: at(0.9), days: read };
}

const hundredth = (value: number) => Math.round(value * 100) / 100;
