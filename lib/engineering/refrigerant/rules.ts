import type { Basis, Rule } from "../findings";

const table: Basis = {
  kind: "physics",
  source: "CoolProp 8.0.0 saturation tables (see README.md of the refrigerant folder)",
  certainty: "computed",
};
const qualityInstallation: Basis = {
  kind: "published source",
  source: "ANSI/ACCA 5 QI-2015, refrigerant charge; the maker's target",
  certainty: "recalled",
};
const tests = "tests/engineering/refrigerant";

/** The rules of the refrigerant folder. */
export const refrigerantRules = {
  saturation: {
    id: "refrigerant.saturation",
    title: "Saturation pressure and temperature",
    equation: "cubic spline of ln P against 1/T",
    basis: table,
    limits: [],
    checkedBy: `${tests}/saturation.test.ts`,
  },
  targetSuperheat: {
    id: "refrigerant.target-superheat",
    title: "Target superheat, fixed orifice",
    equation: "(3 indoor wet bulb − 80 − outdoor dry bulb) / 2, not below 5 °F",
    basis: { kind: "published source", source: "fixed-orifice charging formula", certainty: "published" },
    limits: [],
    checkedBy: `${tests}/charge.test.ts`,
  },
  stabilized: {
    id: "refrigerant.stabilized",
    title: "Steady running before charge is judged",
    equation: "minutes of steady running ≥ limit",
    basis: {
      kind: "published source",
      source: "charging procedure, stabilise 15 min",
      certainty: "published",
    },
    limits: ["refrigerant.stabilizeMinutes"],
    checkedBy: `${tests}/charge-findings.test.ts`,
  },
  superheat: {
    id: "refrigerant.superheat",
    title: "Superheat",
    equation: "|suction line − dew temperature − target| ≤ tolerance",
    basis: qualityInstallation,
    limits: ["refrigerant.superheatTolerance"],
    checkedBy: `${tests}/charge-findings.test.ts`,
  },
  subcooling: {
    id: "refrigerant.subcooling",
    title: "Subcooling",
    equation: "|bubble temperature − liquid line − target| ≤ tolerance",
    basis: qualityInstallation,
    limits: ["refrigerant.subcoolingTolerance"],
    checkedBy: `${tests}/charge-findings.test.ts`,
  },
  lineSet: {
    id: "refrigerant.line-set",
    title: "Charge for the line set",
    equation: "(length − included length) × oz/ft",
    basis: { kind: "maker's data", source: "maker's installation instructions", certainty: "computed" },
    limits: [],
    checkedBy: `${tests}/charge.test.ts`,
  },
  evacuationDepth: {
    id: "refrigerant.evacuation-depth",
    title: "Evacuation depth",
    equation: "vacuum ≤ limit",
    basis: {
      kind: "maker's data",
      source: "maker's installation instructions, 500 microns",
      certainty: "published",
    },
    limits: ["refrigerant.evacuationMicrons"],
    checkedBy: `${tests}/tightness-findings.test.ts`,
  },
  evacuationHold: {
    id: "refrigerant.evacuation-hold",
    title: "Vacuum holds, pump closed off",
    equation: "vacuum after the maker's hold time ≤ limit",
    basis: {
      kind: "maker's data",
      source: "maker's installation instructions, hold time",
      certainty: "published",
    },
    limits: ["refrigerant.evacuationMicrons"],
    checkedBy: `${tests}/tightness-findings.test.ts`,
  },
  pressureTest: {
    id: "refrigerant.pressure-test",
    title: "Nitrogen pressure test",
    equation: "start (absolute) × T end / T start − end ≤ tolerance",
    basis: { kind: "physics", source: "ideal gas at constant volume", certainty: "recalled" },
    limits: ["refrigerant.pressureTestTolerance"],
    checkedBy: `${tests}/tightness-findings.test.ts`,
  },
  flammableCharge: {
    id: "refrigerant.flammable-charge",
    title: "Flammable charge and room size",
    equation: "charge ≤ 52 m³ LFL; room ≥ (m / (2.5 LFL^1.25 h0))² above 6 m³ LFL",
    basis: {
      kind: "published source",
      source: "UL 60335-2-40, unventilated area; the manufacturer's table governs",
      certainty: "recalled",
    },
    limits: [],
    checkedBy: `${tests}/flammable.test.ts`,
  },
} as const satisfies Record<string, Rule>;
