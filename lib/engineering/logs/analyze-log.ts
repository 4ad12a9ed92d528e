import { type LogContext, requireLogContext } from "./context";
import { type HumidDays, humidDays } from "./humid-days";
import { type HumidityAnalysis, humidityAnalysis } from "./humidity";
import { type LoadLine, loadLine } from "./load-line";
import { logSeries } from "./log-series";
import { type MoistureSources, moistureSources } from "./moisture-sources";
import { type RunningAnalysis, runningAnalysis } from "./running";
import { type LogSamples, requireLogSamples } from "./samples";
import { type SensorAnalysis, sensorAnalysis } from "./sensors";
import { type SetpointAnalysis, setpointAnalysis } from "./setpoints";

export type LogAnalysis = {
  readonly period: {
    readonly fromMs: number;
    readonly toMs: number;
    readonly samples: number;
    readonly intervalMin: number;
    /** Hours between the first and last sample that have none. */
    readonly missingHours: number;
  };
  /** Null where the log lacks the columns. */
  readonly humidity: HumidityAnalysis | null;
  readonly humidDays: HumidDays | null;
  readonly running: RunningAnalysis | null;
  readonly sensors: SensorAnalysis;
  readonly moisture: MoistureSources | null;
  readonly loadLine: LoadLine | null;
  readonly setpoints: SetpointAnalysis | null;
};

/**
 * What a house's own log says: humidity against the limit, how the equipment ran, the load line behind it, where the
 * moisture seems to come from, and whether the sensors can be believed.
 *
 * @param samples - Rising times with inch-pound channels; NaN is a gap.
 * @param context - The job's limit, elevation, and delivered capacity and design point when known.
 * @returns Numbers only; a quantity the log cannot give is null.
 * @throws {@link OutOfRangeError} naming a field or sample outside its range.
 * @throws {@link ImpossibleStateError} for times that do not rise or columns of unequal length.
 * @see Moist air: ASHRAE Handbook, Fundamentals 2017, ch. 1 (published), as in `air`.
 */
export function analyzeLog(samples: LogSamples, context: LogContext): LogAnalysis {
  requireLogContext(context);
  requireLogSamples(samples);
  const series = logSeries(samples, context.elevationFt);
  const fromMs = samples.timeMs[0] ?? 0;
  const toMs = (samples.timeMs.at(-1) ?? fromMs) + samples.intervalMin * 60_000;
  return {
    period: {
      fromMs,
      toMs,
      samples: series.length,
      intervalMin: samples.intervalMin,
      missingHours: Math.max(0, (toMs - fromMs) / 3_600_000 - series.length * series.hoursEach),
    },
    humidity: humidityAnalysis(series, context.humidityLimitPct),
    humidDays: humidDays(series),
    running: runningAnalysis(series),
    sensors: sensorAnalysis(series),
    moisture: moistureSources(series, context.humidityLimitPct),
    loadLine: loadLine(series, context),
    setpoints: setpointAnalysis(series),
  };
}
