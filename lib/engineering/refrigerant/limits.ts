import type { LimitDefinition } from "../limit-definition";

/** Numbers of the refrigerant folder a company may set. */
export const refrigerantLimits = {
  "refrigerant.superheatTolerance": {
    title: "Superheat, allowed difference from target",
    unit: "Δ°F",
    seed: 5,
    min: 1,
    max: 10,
    decimals: 1,
    basis: {
      kind: "published source",
      source: "ANSI/ACCA 5 QI-2015, refrigerant charge",
      certainty: "recalled",
    },
  },
  "refrigerant.subcoolingTolerance": {
    title: "Subcooling, allowed difference from target",
    unit: "Δ°F",
    seed: 3,
    min: 1,
    max: 10,
    decimals: 1,
    basis: {
      kind: "published source",
      source: "ANSI/ACCA 5 QI-2015, refrigerant charge",
      certainty: "recalled",
    },
  },
  "refrigerant.stabilizeMinutes": {
    title: "Steady running before charge is judged",
    unit: "min",
    seed: 15,
    min: 5,
    max: 60,
    decimals: 0,
    basis: {
      kind: "published source",
      source: "charging procedure, stabilise 15 min",
      certainty: "published",
    },
  },
  "refrigerant.evacuationMicrons": {
    title: "Evacuation depth",
    unit: "micron",
    seed: 500,
    min: 100,
    max: 1_000,
    decimals: 0,
    basis: {
      kind: "maker's data",
      source: "maker's installation instructions, 500 microns",
      certainty: "published",
    },
  },
  "refrigerant.pressureTestTolerance": {
    title: "Nitrogen test, allowed drop after temperature correction",
    unit: "psi",
    seed: 3,
    min: 0,
    max: 20,
    decimals: 1,
    basis: {
      kind: "common practice, no source",
      source: "reading error of a test gauge",
      certainty: "practice",
    },
  },
} as const satisfies Record<string, LimitDefinition>;
