import { type Finding, finding, type Rule } from "@/lib/engineering/findings";
import { MOST_DEGREE_HOURS } from "../forecast/advice";
import { forecastSentence } from "../forecast/sentence";
import type { JobContext } from "./context";
import type { LineDraft } from "./ledger-draft";

/** Held against the share of hours the company promises, as the log is later. A model never fails a job by itself. */
export const forecastRule: Rule = {
  id: "forecast.dry-hours",
  title: "Dry-hours the design is forecast to give",
  equation:
    "forecast dry-hours ÷ hours of the year ≥ share the company promises, over the whole range, with the temperature held",
  basis: {
    kind: "physics",
    source:
      "model forecast: a simulated typical year of a house derived from its load summary, with assumptions nobody has measured. The share is a company limit, common practice, no source.",
    certainty: "unverified",
  },
  limits: ["logs.dryShareMinPct"],
  checkedBy: "tests/domain/forecast/finding.test.ts",
};
export const forecastRules = { dryHours: forecastRule } as const satisfies Record<string, Rule>;

/** What the kept forecast says of the promise; nothing while none is kept. */
export function forecastFindings({ forecast, limits }: JobContext): readonly Finding[] {
  if (forecast === null) return [];
  const inputs = ["capacitySetting"];
  if (forecast.stale) {
    return [
      finding(forecastRule, {
        verdict: null,
        statement: `The design, its weather or the model has changed since the forecast of ${forecast.keptAt.slice(0, 10)} was kept.`,
        nextStep: "Keep the forecast anew on the options page.",
        inputs,
      }),
    ];
  }
  const { dryHours, hoursAboveLimit, aboveSetpointDegreeHours, hottestF } = forecast.figures.ranges;
  const hours = dryHours.central + hoursAboveLimit.central;
  // Rooms nobody cools are of a low relative humidity: that keeps no promise.
  const isWarm = aboveSetpointDegreeHours.central > MOST_DEGREE_HOURS;
  const warmth = isWarm
    ? ` But it does not hold the temperature: ${Math.round(aboveSetpointDegreeHours.central).toLocaleString("en-US")} degree-hours (°F·h) warmer than the start of cooling, ${hottestF.central.toFixed(1)} °F at the hottest, and warm air is of a lower relative humidity.`
    : "";
  const neededPct = limits["logs.dryShareMinPct"];
  const needed = (neededPct / 100) * hours;
  const isDry = dryHours.low >= needed;
  const verdict = isDry && !isWarm ? "meets" : dryHours.high < needed ? "falls short" : "can't tell";
  return [
    finding(forecastRule, {
      verdict,
      statement: `${forecastSentence(forecast)} The promise is ${neededPct} % of the hours.${warmth}`,
      nextStep:
        verdict === "meets"
          ? null
          : isWarm
            ? "Compare options with more capacity first; then less airflow or a dehumidifier for what stays humid."
            : "Compare options: less airflow, a smaller capacity setting, a dehumidifier; or measure what is only assumed, such as leakage.",
      inputs,
    }),
  ];
}

/** The forecast's line of the ledger; none while no forecast is kept. */
export function forecastLines({ forecast }: JobContext): readonly LineDraft[] {
  if (forecast === null) return [];
  const { dryHours, hoursAboveLimit } = forecast.figures.ranges;
  const whole = (hours: number) => Math.round(hours).toLocaleString("en-US");
  const of = `${whole(dryHours.low)} to ${whole(dryHours.high)} of ${whole(dryHours.central + hoursAboveLimit.central)} h`;
  return [
    {
      key: "forecast-dry-hours",
      group: "Humidity",
      label: "Dry-hours of a typical year, forecast",
      unit: "h",
      decimals: 0,
      designed: {
        value: dryHours.central,
        note: forecast.stale ? `${of}; design changed since` : of,
        at: ["equipment_selection", "capacitySetting"],
        rules: [forecastRule.id],
      },
    },
  ];
}
