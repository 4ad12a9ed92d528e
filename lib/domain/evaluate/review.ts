import { type Finding, finding, notMeasured, type Rule } from "@/lib/engineering/findings";
import { textBeside } from "@/lib/engineering/limit-text";
import {
  type LikelyCause,
  likelyCauses,
  logFindings,
  logsRules,
  whyDryIsUntold,
} from "@/lib/engineering/logs";
import { forecastLivedFindings } from "../forecast-lived/finding";
import type { JobContext } from "./context";

/** The rule that closes the loop: does the house stay at or below the limit it was promised? */
export const dryHoursRule: Rule = {
  id: "review.dry-hours",
  title: "Hours at or below the humidity limit",
  equation: "dry-hours ÷ logged hours ≥ share the company promises",
  basis: {
    kind: "company rule",
    source:
      "The promised limit is the job's own; EPA advises to stay below 60 % (published). The share is a company limit, common practice, no source.",
    certainty: "practice",
  },
  limits: ["logs.dryShareMinPct", "logs.leastHours", "logs.awayDaysMin"],
  checkedBy: "tests/domain/review.test.ts",
};

export const reviewRules = { dryHours: dryHoursRule } as const satisfies Record<string, Rule>;

/** What the log says: of the promise first, then beside the forecast, then of how the house runs. What it has no columns for is `logCannotTell`. */
export function humidityReviewFindings(context: JobContext): readonly Finding[] {
  return [
    ...promiseFindings(context),
    ...forecastLivedFindings(context.lived, context.limits),
    ...ofLog(context).filter(({ verdict }) => verdict !== "not measured"),
  ];
}

/** The questions this log has no columns or not enough days for. They leave the verdict alone: the promise is about humidity. */
export function logCannotTell(context: JobContext): readonly Finding[] {
  return ofLog(context).filter(({ verdict }) => verdict === "not measured");
}

/** What may be behind a humid house, the best supported first. */
export function logCauses({ log, limits }: JobContext): readonly LikelyCause[] {
  return log?.analysis ? likelyCauses(log.analysis, limits) : [];
}

/** What stands where no cause is named: a log that is too short names none either. */
export function withoutCause({ log, limits }: JobContext): string {
  const needed = limits["logs.leastHours"];
  return log !== null && log.loggedHours < needed
    ? `The log is too short to name a cause: it has ${log.loggedHours.toFixed(0)} h of humidity, ${needed.toFixed(0)} h are needed.`
    : "The log shows no sign of a known cause.";
}

/** The dry-hours are the promise's own finding, with the job's limit beside them. */
function ofLog({ log, limits }: JobContext): readonly Finding[] {
  if (!log?.analysis) return [];
  return logFindings(log.analysis, limits)
    .filter(({ ruleId }) => ruleId !== logsRules.dryHours.id)
    .map((one) => (log.outdoorFrom === "typical year" ? besideTypical(one) : one));
}

/** A typical year is not those days' weather: what needs the outdoors stays unanswered and says why. */
function besideTypical(one: Finding): Finding {
  if (one.verdict !== "not measured" || !one.inputs.includes("outdoorF")) return one;
  return {
    ...one,
    statement:
      "This needs the outdoors of the log’s own days; those beside it are a typical year’s and judge nothing.",
    nextStep: `Import a weather station’s file of the same days. ${one.nextStep ?? ""}`.trim(),
  };
}

function promiseFindings(context: JobContext): readonly Finding[] {
  const { log, limits } = context;
  const limitPct = context.inputs.load_summary.humidityLimitPct;
  if (!log || limitPct === null || log.loggedHours === 0) {
    const missing = [...(log ? [] : ["logImportId"])];
    return [
      notMeasured(
        dryHoursRule,
        missing,
        limitPct === null
          ? "Enter the humidity limit in the load summary."
          : "Import a log of the house and choose it here.",
      ),
    ];
  }
  const sharePct = (100 * log.dryHours) / log.loggedHours;
  const neededPct = limits["logs.dryShareMinPct"];
  const kept = sharePct >= neededPct;
  // A summary of before the analysis was kept has its hours alone.
  const untold = log.analysis
    ? whyDryIsUntold(log.analysis, limits, kept)
    : log.loggedHours < limits["logs.leastHours"]
      ? "Let the log run for longer and import it again."
      : null;
  return [
    finding(dryHoursRule, {
      verdict: untold !== null ? "can't tell" : kept ? "meets" : "falls short",
      statement: `The house spent ${log.dryHours.toFixed(0)} of ${log.loggedHours.toFixed(0)} logged hours (${textBeside(sharePct, [neededPct], 1)} %) at or below ${limitPct} %; ${neededPct} % is asked for. Mean ${log.meanRhPct.toFixed(0)} %, ${log.share50To60Pct.toFixed(0)} % of the time from 50 to 60 %, longest spell above the limit ${log.longestWetSpellHours.toFixed(1)} h.`,
      figures: [
        { label: "Dry-hours", value: log.dryHours, unit: "h", decimals: 0 },
        { label: "Above the limit", value: log.hoursAboveLimit, unit: "h", decimals: 0 },
        ...(log.meanDewPointF === null
          ? []
          : [{ label: "Mean indoor dew point", value: log.meanDewPointF, unit: "°F", decimals: 1 }]),
      ],
      nextStep:
        untold ??
        (kept
          ? null
          : "Look at run lengths, airflow per ton and the fan between calls; then at outdoor air."),
      caution:
        kept || untold !== null
          ? null
          : "Mould is judged on surfaces, not by one humidity number; if any is found, follow local rules and licensed practice.",
      inputs: ["logImportId"],
    }),
  ];
}
