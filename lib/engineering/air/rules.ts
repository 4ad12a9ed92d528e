import type { Basis, Rule } from "../findings";

const handbook: Basis = {
  kind: "published source",
  source: "ASHRAE Handbook, Fundamentals 2017, chapter 1",
  certainty: "published",
};

/** The rules of the air folder. */
export const airRules = {
  standardAtmosphere: {
    id: "air.standard-atmosphere",
    title: "Atmospheric pressure from elevation",
    equation: "P = 14.696 (1 − 6.8754e-6 z)^5.2559",
    basis: { ...handbook, source: `${handbook.source}, equation 3`, certainty: "recalled" },
    limits: [],
    checkedBy: "tests/engineering/air/atmosphere.test.ts",
  },
  densityRatio: {
    id: "air.density-ratio",
    title: "Density of the site's air over standard air",
    equation: "ratio = P / 14.696",
    basis: { kind: "physics", source: "ideal gas at one temperature", certainty: "computed" },
    limits: [],
    checkedBy: "tests/engineering/air/atmosphere.test.ts",
  },
  moistAir: {
    id: "air.moist-air",
    title: "State of moist air",
    equation: "W = 0.621945 pw / (P − pw); h = 0.24 t + W (1061 + 0.444 t)",
    basis: handbook,
    limits: [],
    checkedBy: "tests/engineering/air/moist-air.test.ts",
  },
  mixing: {
    id: "air.mixing",
    title: "Mixing of air streams",
    equation: "W and h of the mixture are the mean by mass of dry air",
    basis: { kind: "physics", source: "balance of dry air, water and enthalpy", certainty: "computed" },
    limits: [],
    checkedBy: "tests/engineering/air/mixing.test.ts",
  },
  airSideCapacity: {
    id: "air.air-side-capacity",
    title: "Heat and water taken from the air",
    equation: "total = m (h1 − h2 − (W1 − W2) (t2 − 32)); sensible = m (0.24 + 0.444 W1) (t1 − t2)",
    basis: handbook,
    limits: [],
    checkedBy: "tests/engineering/air/capacity.test.ts",
  },
  quickChecks: {
    id: "air.quick-checks",
    title: "Trade quick checks beside the exact result",
    equation: "1.08 cfm ΔT; 4.5 cfm Δh; 0.68 cfm Δgr; each times the density ratio",
    basis: {
      kind: "physics",
      source: "60 · 0.075 · 0.24 and 60 · 0.075 · 1061 / 7000",
      certainty: "computed",
    },
    limits: [],
    checkedBy: "tests/engineering/air/quick-checks.test.ts",
  },
} as const satisfies Record<string, Rule>;
