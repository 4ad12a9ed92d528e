import type { LivedInForce } from "../forecast-lived/kept";
import type { LineDraft } from "./ledger-draft";

/** The forecast for the log's own hours beside them. */
export function forecastLivedLine(lived: LivedInForce): LineDraft {
  const { low, central, high } = lived.forecast.hoursAboveLimit;
  return {
    key: "forecast-lived",
    group: "Humidity",
    label: "Hours above the limit, forecast and lived",
    unit: "h",
    decimals: 0,
    set: {
      value: central,
      note: `forecast for the log’s ${lived.hours.toFixed(0)} h; ${low.toFixed(0)} to ${high.toFixed(0)} h for what the house may be`,
      at: ["control_setup", null],
    },
    lived: {
      value: lived.lived.hoursAboveLimit,
      note:
        lived.fitted === null
          ? null
          : `${lived.fitted.hoursAboveLimit.central.toFixed(0)} h with the fitted house`,
      at: ["humidity_review", "logImportId"],
      rules: ["simulation.forecast-lived"],
    },
  };
}
