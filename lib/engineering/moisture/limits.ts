import type { LimitDefinition } from "../limit-definition";

/** Numbers of the moisture folder a company may set. */
export const moistureLimits = {
  "moisture.netMaxLbPerH": {
    title: "Most water in over water out",
    unit: "lb/h",
    seed: 0,
    min: 0,
    max: 5,
    decimals: 2,
    basis: {
      kind: "physics",
      source: "a house with more water in than out gets wetter",
      certainty: "computed",
    },
  },
  "moisture.latentRatioMin": {
    title: "Least share of latent capacity kept between calls",
    unit: "ratio",
    seed: 0.8,
    min: 0,
    max: 1,
    decimals: 2,
    basis: {
      kind: "common practice, no source",
      source: "acceptable loss by the fan setting",
      certainty: "practice",
    },
  },
} as const satisfies Record<string, LimitDefinition>;
