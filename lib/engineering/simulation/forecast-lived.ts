import { type Finding, finding } from "../findings";
import type { LimitValues } from "../limit-definition";
import { requireRange } from "../units";
import type { ForecastRange } from "./gather-forecast";
import type { simulationLimits } from "./limits";
import { simulationRules } from "./rules";

/** A forecast beside what the house did in the same hours. */
export type ForecastLivedReadings = {
  /** 30 to 90 %. */
  readonly humidityLimitPct: number;
  /** Hours compared, 1 to 8,784. */
  readonly hours: number;
  /** Of them above the limit, 0 to `hours`. */
  readonly livedHoursAbove: number;
  /** The same of the forecast, 0 to `hours`. */
  readonly forecastHoursAbove: ForecastRange;
  /** False where the log had no outdoors and the forecast ran in a typical year. */
  readonly ownWeather: boolean;
  /** What would explain it, one sentence each, the best first. */
  readonly explanations: readonly string[];
  /** True when the records have changed since the two were held against each other. */
  readonly outdated: boolean;
};

/**
 * Whether the house behaves as forecast: its hours above the limit within the forecast's range, or beyond it by less than the company's
 * margin. A house drier than forecast keeps its promise all the more; it is said, and not held against the job.
 *
 * @param readings - Ranges at {@link ForecastLivedReadings}.
 * @param limits - `simulation.livedMarginPct`, 0 to 50 %.
 * @returns One finding.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see Range of the ensemble (computed); margin: company limit, common practice, no source.
 */
export function forecastLivedFinding(
  readings: ForecastLivedReadings,
  limits: LimitValues<typeof simulationLimits>,
): Finding {
  const { humidityLimitPct, livedHoursAbove: lived, forecastHoursAbove: forecast, explanations } = readings;
  requireRange("humidityLimitPct", humidityLimitPct, "%", 30, 90);
  const hours = requireRange("hours", readings.hours, "h", 1, 8_784);
  requireRange("livedHoursAbove", lived, "h", 0, hours);
  requireRange("forecastHoursAbove.low", forecast.low, "h", 0, hours);
  requireRange("forecastHoursAbove.high", forecast.high, "h", forecast.low, hours);
  const marginPct = requireRange(
    "simulation.livedMarginPct",
    limits["simulation.livedMarginPct"],
    "%",
    0,
    50,
  );
  const margin = (hours * marginPct) / 100;
  const wetter = lived > forecast.high + margin;
  const drier = lived < forecast.low - margin;
  const place = wetter ? "wetter than forecast" : drier ? "drier than forecast" : "within what was forecast";
  const weather = readings.ownWeather
    ? "in the log’s own weather"
    : "in a typical year’s weather, as the log has no outdoors";
  const why = wetter || drier ? (explanations[0] ?? null) : null;
  const outdated = readings.outdated
    ? " The records have changed since; hold the two against each other again."
    : "";
  return finding(simulationRules.forecastLived, {
    verdict: wetter ? "falls short" : "meets",
    statement: `The house was above ${humidityLimitPct} % for ${whole(lived)} of ${whole(hours)} h, ${place}: ${whole(forecast.low)} to ${whole(forecast.high)} h ${weather}.${why === null ? "" : ` ${why}`}${outdated}`,
    figures: [
      { label: "Lived above the limit", value: lived, unit: "h", decimals: 0 },
      { label: "Forecast, least", value: forecast.low, unit: "h", decimals: 0 },
      { label: "Forecast, most", value: forecast.high, unit: "h", decimals: 0 },
    ],
    nextStep: wetter
      ? "Check in the house what would explain it: a blower door for leakage, the airflow and control settings, water given off inside."
      : drier
        ? "The assumptions were on the wet side; look at them before the next forecast."
        : null,
    inputs: ["logImportId"],
  });
}

function whole(value: number): string {
  return Math.round(value).toLocaleString("en-US");
}
