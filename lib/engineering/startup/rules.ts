import type { Basis, Rule } from "../findings";

const FINDINGS_TEST = "tests/engineering/startup/startup-findings.test.ts";
const PRACTICE: Basis = {
  kind: "common practice, no source",
  source: "common practice, no source",
  certainty: "practice",
};
const MAKER: Basis = {
  kind: "maker's data",
  source: "Maker's performance data at the measured conditions; allowed share by company rule",
  certainty: "practice",
};
const AIR_BALANCE: Basis = {
  kind: "physics",
  source: "Air-side balance (ASHRAE Fundamentals ch. 1); uncertainty by JCGM 100:2008",
  certainty: "published",
};
const ACCURACY_LIMITS = ["startup.systematicShare", "startup.unknownAccuracyBand"] as const;

/** What a startup checks of its own; charge and airflow rules live in their folders. */
export const startupRules = {
  deliveredCapacity: {
    id: "startup.delivered-capacity",
    title: "Delivered capacity and moisture removal",
    equation: "dry air flow · (return − supply) of enthalpy and of humidity ratio",
    basis: AIR_BALANCE,
    limits: ["startup.systematicShare"],
    checkedBy: "tests/engineering/startup/delivered-capacity.test.ts",
  },
  totalCapacity: {
    id: "startup.total-capacity",
    title: "Total capacity against what these conditions should give",
    equation: "delivered total / expected total ≥ company share, after steady running",
    basis: MAKER,
    limits: ["startup.totalShareMin", "refrigerant.stabilizeMinutes", ...ACCURACY_LIMITS],
    checkedBy: FINDINGS_TEST,
  },
  sensibleCapacity: {
    id: "startup.sensible-capacity",
    title: "Sensible capacity against what these conditions should give",
    equation: "delivered sensible / expected sensible ≥ company share, after steady running",
    basis: MAKER,
    limits: ["startup.sensibleShareMin", "refrigerant.stabilizeMinutes", ...ACCURACY_LIMITS],
    checkedBy: FINDINGS_TEST,
  },
  moistureRemoval: {
    id: "startup.moisture-removal",
    title: "Moisture removal against what these conditions should give",
    equation: "delivered lb/h / expected lb/h ≥ company share, after steady running",
    basis: MAKER,
    limits: ["startup.moistureShareMin", "refrigerant.stabilizeMinutes", ...ACCURACY_LIMITS],
    checkedBy: FINDINGS_TEST,
  },
  temperatureSplit: {
    id: "startup.temperature-split",
    title: "Temperature split is plausible",
    equation: "cooling: return − supply, heating: supply − return, within the company's range",
    basis: PRACTICE,
    limits: [
      "startup.splitMinF",
      "startup.splitMaxF",
      "startup.riseMinF",
      "startup.riseMaxF",
      ...ACCURACY_LIMITS,
    ],
    checkedBy: FINDINGS_TEST,
  },
  voltage: {
    id: "startup.voltage",
    title: "Running voltage",
    equation: "|volts / nameplate − 1| ≤ allowed share",
    basis: {
      kind: "published source",
      source:
        "NEMA MG 1, running within 10 % of nameplate voltage (from memory, verify against the standard)",
      certainty: "unverified",
    },
    limits: ["startup.voltagePct", ...ACCURACY_LIMITS],
    checkedBy: FINDINGS_TEST,
  },
  current: {
    id: "startup.current",
    title: "Running current",
    equation: "amps / rated amps ≤ allowed share",
    basis: PRACTICE,
    limits: ["startup.ratedAmpsPct", ...ACCURACY_LIMITS],
    checkedBy: FINDINGS_TEST,
  },
  energyBalance: {
    id: "startup.energy-balance",
    title: "Air side against refrigerant side and power",
    equation:
      "(capacity / (3.412 · outdoor unit W)) / ideal efficiency between suction and liquid saturation, within the company's range",
    basis: {
      kind: "physics",
      source:
        "Carnot: no machine beats the ideal between two temperatures (share 1); the narrower range is common practice, no source",
      certainty: "practice",
    },
    limits: ["startup.carnotShareMin", "startup.carnotShareMax", ...ACCURACY_LIMITS],
    checkedBy: FINDINGS_TEST,
  },
  condensate: {
    id: "startup.condensate",
    title: "Drain water against the air side",
    equation: "(lb caught · 60 / min) / air-side lb/h within 1 ± allowed difference",
    basis: {
      kind: "physics",
      source: "Conservation of water; allowed difference is common practice, no source",
      certainty: "practice",
    },
    limits: ["startup.condensatePct", "startup.condensateMinutes", ...ACCURACY_LIMITS],
    checkedBy: "tests/engineering/startup/condensate.test.ts",
  },
  calibration: {
    id: "startup.calibration",
    title: "Instruments within their calibration",
    equation: "day of the readings ≤ calibration due, for every instrument used",
    basis: {
      kind: "company rule",
      source: "A stated accuracy holds only within the calibration interval",
      certainty: "practice",
    },
    limits: [],
    checkedBy: FINDINGS_TEST,
  },
} as const satisfies Record<string, Rule>;
