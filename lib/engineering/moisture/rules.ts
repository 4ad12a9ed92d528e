import type { Basis, Rule } from "../findings";

const physics: Basis = { kind: "physics", source: "water balance", certainty: "computed" };

/** The rules of the moisture folder. */
export const moistureRules = {
  sources: {
    id: "moisture.sources",
    title: "Water given off in the house and brought in by outdoor air",
    equation: "people · lb/h + pints of household and ground / 24 h + m (W_out − W_in)",
    basis: physics,
    limits: [],
    checkedBy: "tests/engineering/moisture/moisture-sources.test.ts",
  },
  removal: {
    id: "moisture.removal",
    title: "Water taken from the air",
    equation: "lb/h = m (W1 − W2); quick check 4.5 cfm ΔW",
    basis: physics,
    limits: [],
    checkedBy: "tests/engineering/moisture/removal.test.ts",
  },
  buffer: {
    id: "moisture.buffer",
    title: "Water held by air and furnishings",
    equation: "lb = multiple · dry air · ΔW",
    basis: physics,
    limits: [],
    checkedBy: "tests/engineering/moisture/buffer.test.ts",
  },
  latentRatio: {
    id: "moisture.latent-ratio",
    title: "Water that dries back off the coil between calls",
    equation:
      "t0 + τ (exp(−t0/τ) − 1) = γ t_off − γ² t_off² / (4 t_wet); ratio = kept / removed over the call",
    basis: {
      kind: "published source",
      source: "Henderson & Rengarajan 1996, as given in the EnergyPlus Engineering Reference",
      certainty: "published",
    },
    limits: [],
    checkedBy: "tests/engineering/moisture/latent-ratio.test.ts",
  },
  dehumidifier: {
    id: "moisture.dehumidifier",
    title: "Dehumidifier at the house's condition",
    equation: "maker's data, linear between points; heat = 3.412 W + 1054 lb/h",
    basis: { kind: "maker's data", source: "the maker's capacity by condition", certainty: "computed" },
    limits: [],
    checkedBy: "tests/engineering/moisture/dehumidifier.test.ts",
  },
  designBalance: {
    id: "moisture.design-balance",
    title: "Water in and out at the cooling design condition",
    equation: "household + outdoor air − removal ≤ limit",
    basis: physics,
    limits: ["moisture.netMaxLbPerH"],
    checkedBy: "tests/engineering/moisture/findings.test.ts",
  },
  wetMildBalance: {
    id: "moisture.wet-mild-balance",
    title: "Water in and out in mild, wet weather without a cooling call",
    equation: "household + outdoor air at the dew-point design condition − dehumidifier ≤ limit",
    basis: physics,
    limits: ["moisture.netMaxLbPerH"],
    checkedBy: "tests/engineering/moisture/findings.test.ts",
  },
  reEvaporation: {
    id: "moisture.re-evaporation",
    title: "Latent capacity kept with this fan setting",
    equation: "latent ratio ≥ limit",
    basis: {
      kind: "common practice, no source",
      source: "how much loss is acceptable",
      certainty: "practice",
    },
    limits: ["moisture.latentRatioMin"],
    checkedBy: "tests/engineering/moisture/findings.test.ts",
  },
} as const satisfies Record<string, Rule>;
