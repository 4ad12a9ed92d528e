import { FIT_BOUNDS, FIT_FACTORS, type FitFactor } from "@/lib/engineering/simulation/fit-factors";
import type { LogFit } from "./fit-to-log";

/** A factor's place against what was assumed, told only where its range leaves no doubt. */
export type FactorWord = "more" | "less" | "as assumed";

/** A smaller difference is within what a house varies by itself. Common practice, no source. */
const WORTH_SAYING = 0.05;

/** Whether a fitted factor is beyond doubt more or less than assumed. */
export function factorWord({ uncertain }: Pick<LogFit, "uncertain">, name: FitFactor): FactorWord {
  const one = uncertain.find((factor) => factor.name === name);
  if (one === undefined) return "as assumed";
  if (one.low > 1 + WORTH_SAYING) return "more";
  return one.high < 1 - WORTH_SAYING ? "less" : "as assumed";
}

const WORDS: { readonly [K in FitFactor]: { readonly more: string; readonly less: string } } = {
  leakage: { more: "The house is leakier than assumed", less: "The house is tighter than assumed" },
  conductance: {
    more: "Walls, roof and windows let more heat through than assumed",
    less: "Walls, roof and windows let less heat through than assumed",
  },
  gains: {
    more: "People and appliances give off more heat than assumed",
    less: "People and appliances give off less heat than assumed",
  },
  moisture: {
    more: "More water is given off inside than assumed",
    less: "Less water is given off inside than assumed",
  },
  buffer: {
    more: "Furnishings hold more water than assumed",
    less: "Furnishings hold less water than assumed",
  },
};

/** What each factor scales. */
export const FACTOR_NAMES: { readonly [K in FitFactor]: string } = {
  conductance: "Heat through walls, roof and windows",
  leakage: "Leakage",
  gains: "Heat of people and appliances",
  moisture: "Water given off inside",
  buffer: "Water held by furnishings",
};

/** A fit tries no factor beyond its bounds: at one, the truth may lie further. */
export function isAtEdge(value: number): boolean {
  return value >= FIT_BOUNDS.high || value <= FIT_BOUNDS.low;
}

function times(value: number): string {
  const edge = !isAtEdge(value) ? "" : value > 1 ? " or more" : " or less";
  return `${value.toFixed(2)}${edge}`;
}

/** What the fit says of the house, the factor furthest from what was assumed first. */
export function fitSentences(fit: Pick<LogFit, "uncertain" | "factors">): readonly string[] {
  const told = FIT_FACTORS.flatMap((name) => {
    const word = factorWord(fit, name);
    const one = fit.uncertain.find((factor) => factor.name === name);
    if (word === "as assumed" || one === undefined) return [];
    const range = `${times(one.value)} times (${times(one.low)} to ${times(one.high)})`;
    return [{ off: Math.abs(Math.log(one.value)), text: `${WORDS[name][word]}: ${range}.` }];
  });
  if (told.length === 0) return ["The log agrees with the house as assumed, within what it can tell."];
  return told.sort((a, b) => b.off - a.off).map(({ text }) => text);
}
