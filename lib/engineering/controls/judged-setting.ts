import { type Figure, type Finding, finding, type Rule } from "../findings";
import type { Consequence } from "./consequences";

/** The one shape of these findings: what is set, what is the limit, what it does here. */
export function judged(
  rule: Rule,
  said: {
    readonly field: string;
    readonly good: boolean;
    readonly words: string;
    readonly figures: readonly Figure[];
    readonly effect: Consequence;
    readonly nextStep: string;
  },
): Finding {
  return finding(rule, {
    verdict: said.good ? "meets" : "falls short",
    statement: `${said.words}${said.effect.words}.`,
    figures: [...said.figures, ...said.effect.figures],
    nextStep: said.good ? null : said.nextStep,
    inputs: [said.field],
  });
}

/**
 * An offset in °F as a figure.
 *
 * @param label - What it is.
 * @param value - °F, 0 to 20.
 */
export const offset = (label: string, value: number): Figure => ({ label, value, unit: "°F", decimals: 1 });
/**
 * A length of time as a figure.
 *
 * @param label - What it is.
 * @param value - Time in the unit, 0 or more.
 * @param unit - Unit shown.
 */
export const time = (label: string, value: number, unit: "min" | "s" | "min/h"): Figure => ({
  label,
  value,
  unit,
  decimals: 0,
});
