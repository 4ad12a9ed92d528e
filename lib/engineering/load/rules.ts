import type { Basis, Rule } from "../findings";

const asTheHouseIs: Basis = {
  kind: "published source",
  source: "ANSI/ACCA 2 Manual J: load at design conditions, without added safety factors",
  certainty: "recalled",
};
const definition: Basis = {
  kind: "physics",
  source: "definition; 1 ton = 12,000 Btu/h",
  certainty: "computed",
};
const paddingTest = "tests/engineering/load/padding-findings.test.ts";

function componentSum<L extends string>(load: L) {
  return {
    id: `load.components-${load.replace(" cooling", "")}`,
    title: `Parts of the ${load} load`,
    equation: "|sum of the parts − total| ≤ tolerance × total",
    basis: {
      kind: "common practice, no source",
      source: "a total is the sum of its parts; the width allowed for rounding is a habit",
      certainty: "practice",
    },
    limits: ["load.componentTolerance"],
    checkedBy: "tests/engineering/load/components.test.ts",
  } as const satisfies Rule;
}

/** The rules of the load folder. */
export const loadRules = {
  totals: {
    id: "load.totals",
    title: "Cooling load",
    equation: "total = sensible + latent; sensible ratio = sensible / total; tons = total / 12,000",
    basis: definition,
    limits: [],
    checkedBy: "tests/engineering/load/load-totals.test.ts",
  },
  latentAboveSensible: {
    id: "load.latent-above-sensible",
    title: "Latent part of the cooling load",
    equation: "latent ≤ sensible",
    basis: {
      kind: "common practice, no source",
      source:
        "at the design hour of a house sun and heat outweigh moisture; more latent than sensible is a field mixed up",
      certainty: "practice",
    },
    limits: [],
    checkedBy: "tests/engineering/load/load-findings.test.ts",
  },
  componentsSensible: componentSum("sensible cooling"),
  componentsLatent: componentSum("latent cooling"),
  componentsHeating: componentSum("heating"),
  ventilation: {
    id: "load.ventilation",
    title: "Outdoor air for the people",
    equation: "0.03 area + 7.5 (bedrooms + 1), less 0.052 wsf (H/8.2)^0.4 Q50",
    basis: {
      kind: "published source",
      source: "ANSI/ASHRAE Standard 62.2, from the 2013 edition on",
      certainty: "published",
    },
    limits: ["load.infiltrationCreditMostShare"],
    checkedBy: "tests/engineering/load/ventilation.test.ts",
  },
  outdoorAir: {
    id: "load.outdoor-air",
    title: "Load of the outdoor air",
    equation: "4.5 cfm (density ratio) (h outdoor − h indoor), at design and in wet, mild weather",
    basis: { kind: "physics", source: "balance of heat and water of moist air", certainty: "computed" },
    limits: [],
    checkedBy: "tests/engineering/load/outdoor-air.test.ts",
  },
  leakage: {
    id: "load.leakage",
    title: "Leakage of the house",
    equation: "A = 0.186 Q4 √(ρ / 2Δp), Q4 = Q50 · 0.08^0.65; flow = A √(Cs |Δt| + Cw U²)",
    basis: {
      kind: "published source",
      source: "ASHRAE Handbook, Fundamentals, ch. 16",
      certainty: "recalled",
    },
    limits: [],
    checkedBy: "tests/engineering/load/leakage.test.ts",
  },
  indoorCooling: {
    id: "load.padding-indoor-cooling",
    title: "Indoor design temperature, cooling",
    equation: "|design − limit| ≤ tolerance; effect = (limit − design) × heat loss per °F",
    basis: asTheHouseIs,
    limits: ["load.indoorCoolingDb", "load.indoorTolerance"],
    checkedBy: paddingTest,
  },
  indoorHumidity: {
    id: "load.padding-indoor-humidity",
    title: "Indoor design humidity, cooling",
    equation: "|design − limit| ≤ tolerance; effect = outdoor air × difference of humidity ratio",
    basis: asTheHouseIs,
    limits: ["load.indoorCoolingRh", "load.humidityTolerance"],
    checkedBy: paddingTest,
  },
  indoorHeating: {
    id: "load.padding-indoor-heating",
    title: "Indoor design temperature, heating",
    equation: "|design − limit| ≤ tolerance; effect = (design − limit) × heat loss per °F",
    basis: asTheHouseIs,
    limits: ["load.indoorHeatingDb", "load.indoorTolerance"],
    checkedBy: paddingTest,
  },
  outdoorCooling: {
    id: "load.padding-outdoor-cooling",
    title: "Outdoor design temperature, cooling",
    equation: "|design − weather file| ≤ tolerance; effect = (design − weather) × heat loss per °F",
    basis: asTheHouseIs,
    limits: ["load.outdoorCoolingTolerance"],
    checkedBy: paddingTest,
  },
  outdoorHeating: {
    id: "load.padding-outdoor-heating",
    title: "Outdoor design temperature, heating",
    equation: "|design − weather file| ≤ tolerance; effect = (weather − design) × heat loss per °F",
    basis: asTheHouseIs,
    limits: ["load.outdoorHeatingTolerance"],
    checkedBy: paddingTest,
  },
  leakageKnown: {
    id: "load.padding-leakage",
    title: "Leakage measured, not guessed",
    equation: "the leakage in the load comes from a test of this house",
    basis: asTheHouseIs,
    limits: [],
    checkedBy: paddingTest,
  },
  ducts: {
    id: "load.padding-ducts",
    title: "Duct gain",
    equation: "ducts inside the insulated space have no gain from outdoors",
    basis: asTheHouseIs,
    limits: [],
    checkedBy: paddingTest,
  },
  duplicates: {
    id: "load.padding-duplicates",
    title: "Gains counted twice",
    equation: "gains counted twice = 0",
    basis: asTheHouseIs,
    limits: [],
    checkedBy: paddingTest,
  },
  safetyFactor: {
    id: "load.padding-safety-factor",
    title: "Safety factor",
    equation: "factor = 0; effect = load · s / (1 + s)",
    basis: asTheHouseIs,
    limits: [],
    checkedBy: paddingTest,
  },
  paddingTotal: {
    id: "load.padding-total",
    title: "Padding, together",
    equation: "sum of the effects on the cooling load; those on the heating load beside it",
    basis: definition,
    limits: [],
    checkedBy: paddingTest,
  },
} as const satisfies Record<string, Rule>;
