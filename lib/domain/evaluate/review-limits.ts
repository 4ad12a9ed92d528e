import type { LimitDefinition } from "@/lib/engineering/limit-definition";

/** Numbers of the humidity review a company may set. */
export const reviewLimits = {
  "review.dryShareMinPct": {
    title: "Least share of logged hours at or below the limit",
    unit: "%",
    seed: 95,
    min: 50,
    max: 100,
    decimals: 0,
    basis: {
      kind: "common practice, no source",
      source: "what a contractor may call a kept promise",
      certainty: "practice",
    },
  },
} as const satisfies Readonly<Record<string, LimitDefinition>>;
