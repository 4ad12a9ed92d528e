import type { LogAnalysis } from "./analyze-log";
import type { LogLimits } from "./judged";

/** Away for less than this share of the log, it says little less of the rest. */
const LEAST_AWAY_SHARE = 0.05;

/**
 * Whether the indoor sensor hung elsewhere for so much of the log that nothing follows from its readings.
 *
 * @param analysis - From `analyzeLog`.
 * @param limits - Limits in force; ranges at `logsLimits`.
 * @see common practice, no source.
 */
export function hungElsewhere(
  { humidity, sensors }: Pick<LogAnalysis, "humidity" | "sensors">,
  limits: LogLimits,
): boolean {
  const days = sensors.awayFromRoomDays ?? 0;
  return days >= limits["logs.awayDaysMin"] && days * 24 >= LEAST_AWAY_SHARE * (humidity?.hours ?? 0);
}

/**
 * Why a log cannot tell whether the house stays dry, as what to do about it: a sensor that hung elsewhere, too few hours, or dry
 * hours in dry weather, which are no merit of the house. A house that is too wet is so in any weather.
 *
 * @param analysis - From `analyzeLog`.
 * @param limits - Limits in force; ranges at `logsLimits`.
 * @param isDry - Whether its readings are dry enough.
 * @returns What to do; null when the log tells.
 * @see common practice, no source.
 */
export function whyDryIsUntold(
  { humidity, sensors }: Pick<LogAnalysis, "humidity" | "sensors">,
  limits: LogLimits,
  isDry: boolean,
): string | null {
  if (hungElsewhere({ humidity, sensors }, limits))
    return `The sensor was not in the thermostat's room on ${sensors.awayFromRoomDays} days: import only the days it hung there.`;
  const needed = limits["logs.leastHours"];
  if ((humidity?.hours ?? 0) < needed) return "Let the log run for longer and import it again.";
  const humid = humidity?.humidOutdoorHours ?? null;
  return isDry && humid !== null && humid < needed
    ? `Import a log of humid weather: only in ${humid.toFixed(0)} h was the air outdoors more humid than the house may be; ${needed.toFixed(0)} h are needed.`
    : null;
}
