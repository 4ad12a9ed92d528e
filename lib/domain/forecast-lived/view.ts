import type { ForecastRange } from "@/lib/engineering/simulation";
import { explanations } from "./explain";
import type { LivedSummary } from "./kept";

/** One row: what was lived beside what was forecast, as texts with their units. */
export type ForecastLivedRow = {
  readonly label: string;
  readonly lived: string;
  readonly forecast: string;
  /** "–" without a fit. */
  readonly fitted: string;
};

/** Forecast and lived as a paper prints them. */
export type ForecastLivedPaper = {
  readonly lead: string;
  readonly rows: readonly ForecastLivedRow[];
  /** What would explain a difference, one sentence each. */
  readonly explanations: readonly string[];
};

/** The forecast beside what was lived in plain texts, for a packet. */
export function forecastLivedPaper(lived: LivedSummary): ForecastLivedPaper {
  const { lived: is, forecast, fitted } = lived;
  const row = (
    label: string,
    unit: string,
    decimals: number,
    values: {
      readonly is: number | null;
      readonly forecast: ForecastRange | null;
      readonly fitted: ForecastRange | null;
    },
  ): ForecastLivedRow => {
    const number = (value: number) =>
      value.toLocaleString("en-US", { minimumFractionDigits: decimals, maximumFractionDigits: decimals });
    const range = (one: ForecastRange | null) =>
      one === null ? "–" : `${number(one.central)} ${unit} (${number(one.low)} to ${number(one.high)})`;
    return {
      label,
      lived: values.is === null ? "–" : `${number(values.is)} ${unit}`,
      forecast: range(values.forecast),
      fitted: range(values.fitted),
    };
  };
  const weather =
    lived.weather === "the log's own"
      ? "in the log’s own weather"
      : `in the typical year of ${lived.weatherName}`;
  return {
    lead: `${lived.hours.toLocaleString("en-US")} h compared, hour against hour, ${weather}.`,
    rows: [
      row(`Above ${lived.humidityLimitPct} %`, "h", 0, {
        is: is.hoursAboveLimit,
        forecast: forecast.hoursAboveLimit,
        fitted: fitted?.hoursAboveLimit ?? null,
      }),
      row("Mean humidity", "%", 1, {
        is: is.meanRhPct,
        forecast: forecast.meanRhPct,
        fitted: fitted?.meanRhPct ?? null,
      }),
      ...(is.runHours === null
        ? []
        : [
            row("Compressor ran", "h", 0, {
              is: is.runHours,
              forecast: forecast.runHours,
              fitted: fitted?.runHours ?? null,
            }),
          ]),
    ],
    explanations: explanations(lived),
  };
}
