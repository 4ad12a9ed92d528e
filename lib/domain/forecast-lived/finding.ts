import type { Finding } from "@/lib/engineering/findings";
import { forecastLivedFinding } from "@/lib/engineering/simulation/forecast-lived";
import type { Limits } from "../limits";
import { explanations } from "./explain";
import type { LivedInForce } from "./kept";

/** Whether the house behaves as forecast; nothing before the two were held against each other. */
export function forecastLivedFindings(lived: LivedInForce | null, limits: Limits): readonly Finding[] {
  if (lived === null || lived.hours === 0) return [];
  return [
    forecastLivedFinding(
      {
        humidityLimitPct: lived.humidityLimitPct,
        hours: lived.hours,
        livedHoursAbove: lived.lived.hoursAboveLimit,
        forecastHoursAbove: lived.forecast.hoursAboveLimit,
        ownWeather: lived.weather === "the log's own",
        explanations: explanations(lived),
        outdated: lived.outdated,
      },
      limits,
    ),
  ];
}
