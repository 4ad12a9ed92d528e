import { coolingOnly } from "./heating";
import { logAir } from "./log-air";
import type { LogChannel, LogSamples } from "./samples";

/** The channels of a log with what is computed from them, one element a sample; NaN is a gap. */
export type LogSeries = {
  readonly length: number;
  readonly timeMs: Float64Array;
  readonly intervalMin: number;
  /** Hours a sample stands for. */
  readonly hoursEach: number;
  /** Hour of the house's clock, 0 to 23. */
  readonly localHour: Uint8Array;
  /** Day of the house's clock, days since 1970. */
  readonly localDay: Int32Array;
  /** 1 where the sample does not follow the one before: the first, and after missing time. */
  readonly afterGap: Uint8Array;
  readonly channel: (name: LogChannel) => Float64Array | null;
  readonly indoorDewPointF: Float64Array | null;
  readonly indoorHumidityRatio: Float64Array | null;
  readonly outdoorDewPointF: Float64Array | null;
  readonly outdoorHumidityRatio: Float64Array | null;
  /** Share of the interval with any compressor stage on that cools; heating is a gap. */
  readonly coolingShare: Float64Array | null;
};

const HOUR_MS = 3_600_000;
/** More than this many intervals between two samples is missing time. */
const GAP_INTERVALS = 1.5;

/**
 * Computes the series every part of the analysis shares, once.
 *
 * @param elevationFt - Height of the house, ft, −2,000 to 20,000.
 * @throws {@link OutOfRangeError} for an input outside its range, naming the field.
 */
export function logSeries(samples: LogSamples, elevationFt: number): LogSeries {
  const { timeMs, utcOffsetMin, intervalMin, channels } = samples;
  const { length } = timeMs;
  const localHour = new Uint8Array(length);
  const localDay = new Int32Array(length);
  const afterGap = new Uint8Array(length);
  for (let index = 0; index < length; index++) {
    const local = (timeMs[index] ?? 0) + (utcOffsetMin[index] ?? 0) * 60_000;
    localDay[index] = Math.floor(local / (24 * HOUR_MS));
    localHour[index] = Math.floor(local / HOUR_MS) - (localDay[index] ?? 0) * 24;
    const step = index === 0 ? Number.POSITIVE_INFINITY : (timeMs[index] ?? 0) - (timeMs[index - 1] ?? 0);
    afterGap[index] = step > GAP_INTERVALS * intervalMin * 60_000 ? 1 : 0;
  }
  const air = logAir(elevationFt);
  const moist = (dryBulbF: Float64Array | undefined, rhPct: Float64Array | undefined) => {
    if (dryBulbF === undefined || rhPct === undefined) return null;
    const dewPointF = new Float64Array(length);
    const humidityRatio = new Float64Array(length);
    for (let index = 0; index < length; index++) {
      const vapour = air.vapourPsia(dryBulbF[index] ?? Number.NaN, rhPct[index] ?? Number.NaN);
      dewPointF[index] = air.dewPointF(vapour);
      humidityRatio[index] = air.humidityRatio(vapour);
    }
    return { dewPointF, humidityRatio };
  };
  const indoor = moist(channels.indoorF, channels.indoorRhPct);
  // A station's own dew point is saturated air at that temperature; used where there is no relative humidity.
  const station = channels.outdoorDewPointF;
  const outdoor =
    moist(channels.outdoorF, channels.outdoorRhPct) ??
    (station === undefined ? null : moist(station, new Float64Array(length).fill(100)));
  const running = runningShareOf(channels.firstStageShare, channels.secondStageShare, length);
  return {
    length,
    timeMs,
    intervalMin,
    hoursEach: intervalMin / 60,
    localHour,
    localDay,
    afterGap,
    channel: (name) => channels[name] ?? null,
    indoorDewPointF: indoor?.dewPointF ?? null,
    indoorHumidityRatio: indoor?.humidityRatio ?? null,
    outdoorDewPointF: outdoor?.dewPointF ?? null,
    outdoorHumidityRatio: outdoor?.humidityRatio ?? null,
    coolingShare:
      running === null
        ? null
        : coolingOnly(running, {
            indoorF: channels.indoorF ?? null,
            outdoorF: channels.outdoorF ?? null,
            auxiliaryShare: channels.auxiliaryShare ?? null,
            afterGap,
          }),
  };
}

/**
 * Some thermostats count first-stage time on while the second runs, others count each minute once. The first is the case
 * when the two together ever exceed their interval, or the second never exceeds the first; then the longer of the two is
 * the running time, else their sum.
 */
function runningShareOf(
  first: Float64Array | undefined,
  second: Float64Array | undefined,
  length: number,
): Float64Array | null {
  if (first === undefined || second === undefined) return first ?? second ?? null;
  const share = new Float64Array(length);
  const nested =
    first.some((value, index) => value + (second[index] ?? 0) > 1.02) ||
    !first.some((value, index) => (second[index] ?? 0) > value + 0.02);
  for (let index = 0; index < length; index++) {
    const [one, two] = [first[index] ?? Number.NaN, second[index] ?? Number.NaN];
    share[index] = nested ? Math.max(one, two) : Math.min(1, one + two);
  }
  return share;
}

/**
 * Mean of the values counted so far; null for none.
 *
 * @param sum - Sum in any unit; 0 for none.
 * @param count - How many, 0 or more.
 * @returns Mean in the unit of the sum.
 * @see Arithmetic mean (computed).
 */
export function meanOf(sum: number, count: number): number | null {
  return count === 0 ? null : sum / count;
}

/**
 * Moisture the room may hold at its humidity limit: at one temperature it is to what the room holds as the limit is to its relative
 * humidity.
 *
 * @param series - The log.
 * @param rh - Its indoor relative humidity, %, 0 to 100.
 * @param index - Sample, 0 to the series' length − 1.
 * @param limitPct - Humidity limit, % RH, 30 to 70.
 * @returns Humidity ratio, lb/lb; NaN where indoor moisture or humidity is not known.
 * @see Relative humidity over humidity ratio at one temperature (physics; the ratio's small curvature left out).
 */
export function moistureAllowed(
  series: LogSeries,
  rh: Float64Array,
  index: number,
  limitPct: number,
): number {
  return ((series.indoorHumidityRatio?.[index] ?? Number.NaN) * limitPct) / (rh[index] ?? Number.NaN);
}
