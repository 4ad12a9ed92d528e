import type { Rule } from "../findings";

export const simulationRules = {
  year: {
    id: "simulation.year",
    title: "A year of this house, minute by minute",
    equation:
      "C dT/dt = UA (To − T) + m c (To − T) + K (Tm − T) + gains − coil; M dW/dt = m (Wo − W) + k (Wb − W) + sources − coil",
    basis: { kind: "physics", source: "balances of heat and water, trapezoid rule", certainty: "computed" },
    limits: [],
    checkedBy: "tests/engineering/simulation/year.long.test.ts",
  },
  coilWater: {
    id: "simulation.coil-water",
    title: "Water that dries back off the coil",
    equation: "u = √(water/full); du/dt = −γ/(2 t_wet) while the fan blows over the resting coil",
    basis: {
      kind: "published source",
      source: "Henderson & Rengarajan 1996, as given in the EnergyPlus Engineering Reference",
      certainty: "published",
    },
    limits: [],
    checkedBy: "tests/engineering/simulation/coil-store.test.ts",
  },
  forecast: {
    id: "simulation.forecast",
    title: "A forecast as a range",
    equation:
      "the year for the house as assumed, and for drawn houses and years between the low and high of what is uncertain",
    basis: {
      kind: "physics",
      source: "Latin hypercube sampling; the ranges themselves are assumptions shown with their reasons",
      certainty: "recalled",
    },
    limits: [],
    checkedBy: "tests/engineering/simulation/forecast.test.ts",
  },
  search: {
    id: "simulation.search",
    title: "Settings that keep the promise",
    equation:
      "every combination in the order of its effort, until no smaller effort is left; one setting turned at a time for what matters",
    basis: {
      kind: "physics",
      source: "the year of each combination; exhaustive search",
      certainty: "computed",
    },
    limits: [],
    checkedBy: "tests/engineering/simulation/search-settings.long.test.ts",
  },
  forecastLived: {
    id: "simulation.forecast-lived",
    title: "The house behaves as forecast",
    equation:
      "hours above the limit in the log ≤ most of the forecast's range for the same hours + margin; less than the least − margin is said",
    basis: {
      kind: "company rule",
      source:
        "The forecast is run again in the log's own weather for the house as assumed; the margin is a company limit, common practice, no source.",
      certainty: "practice",
    },
    limits: ["simulation.livedMarginPct"],
    checkedBy: "tests/engineering/simulation/forecast-lived.test.ts",
  },
  fit: {
    id: "simulation.fit",
    title: "The house fitted to its log",
    equation:
      "least squares of room temperature and humidity over factors on conductance, leakage, gains, moisture and buffer; every fourth day held out",
    basis: {
      kind: "published source",
      source: "Marquardt 1963; JCGM 100 for the standard errors",
      certainty: "recalled",
    },
    limits: [],
    checkedBy: "tests/engineering/simulation/fit-house.test.ts",
  },
  crossCheck: {
    id: "simulation.load-cross-check",
    title: "Load summary beside the house model",
    equation:
      "UA·ΔT + outdoor air + sun and gains through the mass, air held at the indoor design; differences over 20 % are explained",
    basis: {
      kind: "physics",
      source:
        "balances of heat and water of the house model, sun of a clear July day; what is assumed of the house: common practice, no source",
      certainty: "practice",
    },
    limits: [],
    checkedBy: "tests/engineering/simulation/design-day.test.ts",
  },
} as const satisfies Record<string, Rule>;
