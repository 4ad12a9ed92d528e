import type { Rule } from "../findings";

export const weatherRules = {
  designConditions: {
    id: "weather.design-conditions",
    title: "Design conditions of the weather file",
    equation: "1 % cooling dry bulb and dew point, 99 % heating dry bulb, by rank of the file's own hours",
    basis: {
      kind: "published source",
      source:
        "percentile definitions of ASHRAE Handbook, Fundamentals 2017, ch. 14 (from memory), applied to one typical year",
      certainty: "recalled",
    },
    limits: [],
    checkedBy: "tests/engineering/weather/design-conditions.test.ts",
  },
  sun: {
    id: "weather.sun",
    title: "Sun on a surface",
    equation: "DNI cos θ + DHI (1 + cos β)/2 + ρ GHI (1 − cos β)/2",
    basis: {
      kind: "published source",
      source:
        "low-precision sun of The Astronomical Almanac; isotropic sky of Liu and Jordan (both from memory)",
      certainty: "recalled",
    },
    limits: [],
    checkedBy: "tests/engineering/weather/sun.test.ts",
  },
} as const satisfies Record<string, Rule>;
