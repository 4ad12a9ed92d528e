import type { Basis } from "../findings";
import type { LimitDefinition } from "../limit-definition";

const designConditions: Basis = {
  kind: "published source",
  source: "ANSI/ACCA 2 Manual J, indoor design conditions",
  certainty: "recalled",
};
const habit: Basis = {
  kind: "common practice, no source",
  source: "width within which design conditions count as the same",
  certainty: "practice",
};

/** Numbers of the load folder a company may set. */
export const loadLimits = {
  "load.indoorCoolingDb": {
    title: "Indoor design temperature, cooling",
    unit: "°F",
    seed: 75,
    min: 68,
    max: 80,
    decimals: 0,
    basis: designConditions,
  },
  "load.indoorCoolingRh": {
    title: "Indoor design humidity, cooling",
    unit: "%",
    seed: 50,
    min: 35,
    max: 60,
    decimals: 0,
    basis: designConditions,
  },
  "load.indoorHeatingDb": {
    title: "Indoor design temperature, heating",
    unit: "°F",
    seed: 70,
    min: 60,
    max: 76,
    decimals: 0,
    basis: designConditions,
  },
  "load.indoorTolerance": {
    title: "Indoor design temperature, difference not counted",
    unit: "Δ°F",
    seed: 1,
    min: 0,
    max: 5,
    decimals: 1,
    basis: habit,
  },
  "load.humidityTolerance": {
    title: "Indoor design humidity, difference not counted",
    unit: "%",
    seed: 2,
    min: 0,
    max: 10,
    decimals: 0,
    basis: habit,
  },
  "load.outdoorCoolingTolerance": {
    title: "Outdoor design temperature for cooling, difference from the weather file not counted",
    unit: "Δ°F",
    seed: 3,
    min: 0,
    max: 10,
    decimals: 1,
    basis: habit,
  },
  "load.outdoorHeatingTolerance": {
    title: "Outdoor design temperature for heating, difference from the weather file not counted",
    unit: "Δ°F",
    seed: 6,
    min: 0,
    max: 15,
    decimals: 1,
    basis: habit,
  },
  "load.componentTolerance": {
    title: "Load by component, difference between sum and total not counted",
    unit: "%",
    seed: 2,
    min: 0,
    max: 10,
    decimals: 1,
    basis: {
      kind: "common practice, no source",
      source: "rounding of the parts and of the total",
      certainty: "practice",
    },
  },
  "load.infiltrationCreditMostShare": {
    title: "Leakage credit, most of the ventilation need",
    unit: "%",
    seed: 67,
    min: 0,
    max: 100,
    decimals: 0,
    basis: {
      kind: "published source",
      source:
        "ANSI/ASHRAE Standard 62.2, limit of the infiltration credit: from memory, verify against the standard",
      certainty: "unverified",
    },
  },
} as const satisfies Record<string, LimitDefinition>;
