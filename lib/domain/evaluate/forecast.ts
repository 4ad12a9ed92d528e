import { type Finding, finding, type Rule } from "@/lib/engineering/findings";
import { forecastSentence } from "../forecast/sentence";
import type { JobContext } from "./context";
import type { LineDraft } from "./ledger-draft";

/** Held against the share of hours the company promises, as the log is later. A model never fails a job by itself. */
export const forecastRule: Rule = {
  id: "forecast.dry-hours",
  title: "Dry-hours the design is forecast to give",
  equation: "forecast dry-hours ÷ hours of the year ≥ share the company promises, over the whole range",
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
  const { dryHours, hoursAboveLimit } = forecast.figures.ranges;
  const hours = dryHours.central + hoursAboveLimit.central;
  const neededPct = limits["logs.dryShareMinPct"];
  const needed = (neededPct / 100) * hours;
  const verdict = dryHours.low >= needed ? "meets" : dryHours.high < needed ? "falls short" : "can't tell";
  return [
    finding(forecastRule, {
      verdict,
      statement: `${forecastSentence(forecast)} The promise is ${neededPct} % of the hours.`,
      nextStep:
        verdict === "meets"
          ? null
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
