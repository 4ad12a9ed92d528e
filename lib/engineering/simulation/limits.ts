import type { LimitDefinition } from "../limit-definition";

/** How close a house has to keep to its forecast. */
export const simulationLimits = {
  "simulation.livedMarginPct": {
    title: "A house may be beyond its forecast's range by, share of the hours",
    unit: "%",
    seed: 5,
    min: 0,
    max: 50,
    decimals: 0,
    basis: {
      kind: "common practice, no source",
      source: "common practice, no source",
      certainty: "practice",
    },
  },
} as const satisfies Record<string, LimitDefinition>;
