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
} as const satisfies Record<string, Rule>;
