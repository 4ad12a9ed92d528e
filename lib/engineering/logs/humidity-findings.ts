import { type Finding, notMeasured } from "../findings";
import { textBeside } from "../limit-text";
import type { LogAnalysis } from "./analyze-log";
import { whyDryIsUntold } from "./dry-told";
import { figure, judged, type LogLimits } from "./judged";
import { logsRules } from "./rules";

const MOULD_CAUTION =
  "Mould is judged on surfaces, not by one humidity number; damp or visibly mouldy surfaces call for a qualified look.";

const toldOr = (unsure: string | null) => (unsure === null ? { enough: true } : { enough: false, unsure });

/** Dry-hours and the longest wet spell. */
export function humidityFindings(analysis: LogAnalysis, limits: LogLimits): readonly Finding[] {
  const { humidity } = analysis;
  if (humidity === null) {
    const nextStep = "Import a log with the indoor relative humidity.";
    return [logsRules.dryHours, logsRules.wetSpell].map((rule) =>
      notMeasured(rule, ["indoorRhPct"], nextStep),
    );
  }
  const least = limits["logs.dryShareMinPct"];
  const dryPct = humidity.dryShare * 100;
  const spell = humidity.longestWetSpell?.hours ?? 0;
  const most = limits["logs.wetSpellMaxH"];
  const limit = humidity.limitPct.toFixed(0);
  return [
    judged(logsRules.dryHours, {
      good: dryPct >= least,
      ...toldOr(whyDryIsUntold(analysis, limits, dryPct >= least)),
      statement: `${humidity.dryHours.toFixed(0)} of ${humidity.hours.toFixed(0)} hours (${textBeside(dryPct, [least], 0)} %) were at or below ${limit} % humidity; ${least.toFixed(0)} % is the aim.`,
      figures: [
        figure("dry-hours", humidity.dryHours, "h", 0),
        figure("share", dryPct, "%", 0),
        figure("mean humidity", humidity.meanRhPct, "%", 0),
      ],
      nextStep: "Look at the likely causes below, beginning with the best supported.",
      caution: MOULD_CAUTION,
      inputs: ["indoorRhPct"],
    }),
    judged(logsRules.wetSpell, {
      good: spell <= most,
      ...toldOr(whyDryIsUntold(analysis, limits, spell <= most)),
      statement: `The longest time above ${limit} % humidity was ${textBeside(spell, [most], 1)} h; ${most.toFixed(0)} h is the limit.`,
      figures: [figure("longest wet spell", spell, "h", 1)],
      nextStep: "See what ran and what the weather was in that spell.",
      caution: MOULD_CAUTION,
      inputs: ["indoorRhPct"],
    }),
  ];
}
