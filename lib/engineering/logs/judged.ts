import { type Figure, type Finding, finding, type Rule } from "../findings";
import type { LimitValues } from "../limit-definition";
import { requireRange } from "../units";
import { logsLimits } from "./limits";

export type LogLimits = LimitValues<typeof logsLimits>;

/**
 * Refuses limits outside their ranges, naming the key.
 *
 * @throws {@link OutOfRangeError} naming the key.
 */
export function requireLogLimits(limits: LogLimits): void {
  for (const [key, { unit, min, max }] of Object.entries(logsLimits)) {
    requireRange(key, limits[key as keyof typeof logsLimits], unit, min, max);
  }
}

/**
 * A figure of a finding.
 *
 * @param label - What it is.
 * @param value - Finite, 0 and below count.
 * @param unit - Its unit.
 * @param decimals - Digits after the point, 0 to 6.
 */
export const figure = (label: string, value: number, unit: string, decimals: number): Figure => ({
  label,
  value,
  unit,
  decimals,
});

/** Verdict on one number; a log with too few hours cannot tell. */
export function judged(
  rule: Rule,
  said: {
    readonly good: boolean;
    readonly enough: boolean;
    readonly statement: string;
    readonly figures: readonly Figure[];
    readonly nextStep: string;
    /** What to do when it cannot be told; else the log is to run for longer. */
    readonly unsure?: string;
    readonly caution?: string;
    readonly inputs: readonly string[];
  },
): Finding {
  return finding(rule, {
    verdict: said.enough ? (said.good ? "meets" : "falls short") : "can't tell",
    statement: said.statement,
    figures: said.figures,
    nextStep: said.enough
      ? said.good
        ? null
        : said.nextStep
      : (said.unsure ?? "Let the log run for longer and import it again."),
    caution: said.enough && !said.good ? (said.caution ?? null) : null,
    inputs: said.inputs,
  });
}
