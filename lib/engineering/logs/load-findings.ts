import { type Finding, notMeasured } from "../findings";
import type { LogAnalysis } from "./analyze-log";
import { figure, judged, type LogLimits } from "./judged";
import { logsRules } from "./rules";

/** The measured load line against capacity and load summary. */
export function loadFindings({ loadLine }: LogAnalysis, limits: LogLimits): readonly Finding[] {
  const atDesign = loadLine?.atDesign ?? null;
  const line = loadLine ?? null;
  if (line === null || atDesign === null) {
    return [logsRules.oversize, logsRules.loadSummary].map((rule) =>
      notMeasured(
        rule,
        ["firstStageShare", "outdoorF", "deliveredSensibleBtuhByStage", "design"],
        "Import at least 8 days of cooling over 8 °F of outdoor temperature, near the design temperature, with startup's delivered capacity.",
      ),
    );
  }
  const days = `by the log's ${line.dayCount} days (95 %: ${line.slopeLow.toFixed(0)} to ${line.slopeHigh.toFixed(0)} Btu/h per °F)`;
  const mostRatio = limits["logs.oversizeRatioMax"];
  const mostApart = limits["logs.loadSummaryApartMaxPct"];
  const apartPct = (atDesign.overLoadSummary - 1) * 100;
  return [
    judged(logsRules.oversize, {
      good: atDesign.oversizeRatio <= mostRatio,
      enough: true,
      statement: `Sensible capacity is ${atDesign.oversizeRatio.toFixed(2)} of the ${atDesign.sensibleBtuh.toFixed(0)} Btu/h a design day takes ${days}; ${mostRatio.toFixed(2)} is the limit.`,
      figures: [
        figure("capacity over measured load", atDesign.oversizeRatio, "ratio", 2),
        figure("zero-load outdoor temperature", line.zeroLoadF, "°F", 1),
        figure("design-day duty", atDesign.duty * 100, "%", 0),
      ],
      nextStep: "Lower the capacity setting, or the airflow of equipment whose capacity follows it.",
      inputs: ["firstStageShare", "outdoorF"],
    }),
    judged(logsRules.loadSummary, {
      good: Math.abs(apartPct) <= mostApart,
      enough: true,
      statement: `The measured design-day load is ${apartPct >= 0 ? "+" : "−"}${Math.abs(apartPct).toFixed(0)} % of the load summary's ${days}; ${mostApart.toFixed(0)} % either way is to be expected.`,
      figures: [figure("measured against load summary", apartPct, "%", 0)],
      nextStep:
        "Explain the difference: people, leakage, ducts, safety factors, or a capacity that is no longer delivered.",
      inputs: ["firstStageShare", "outdoorF"],
    }),
  ];
}
