import type { Basis } from "../findings";
import type { LimitDefinition } from "../limit-definition";

const RESNET_310: Basis = {
  kind: "published source",
  source: "ANSI/RESNET/ICC 310, airflow and fan power grades",
  certainty: "recalled",
};
const ACCA_5: Basis = {
  kind: "published source",
  source: "ANSI/ACCA 5 QI-2015, static pressure within 25 % or 0.10 in. w.c. of design",
  certainty: "recalled",
};
const MANUAL_D: Basis = {
  kind: "published source",
  source: "ANSI/ACCA 1 Manual D, friction rate worksheet",
  certainty: "recalled",
};
const PRACTICE: Basis = {
  kind: "common practice, no source",
  source: "common practice, no source",
  certainty: "practice",
};
const FREEZING: Basis = {
  kind: "physics",
  source: "Water freezes at 32 °F; a coil surface below it collects frost",
  certainty: "computed",
};

/** The numbers of airflow setup that a company may set. */
export const airflowLimits = {
  "airflow.goodPct": {
    title: "Measured airflow is good within this share of design",
    unit: "%",
    seed: 15,
    min: 1,
    max: 30,
    decimals: 0,
    basis: RESNET_310,
  },
  "airflow.fairPct": {
    title: "Measured airflow is fair within this share of design",
    unit: "%",
    seed: 25,
    min: 1,
    max: 50,
    decimals: 0,
    basis: RESNET_310,
  },
  "airflow.staticDesignPct": {
    title: "External static within this share of design",
    unit: "%",
    seed: 25,
    min: 1,
    max: 100,
    decimals: 0,
    basis: ACCA_5,
  },
  "airflow.staticDesignInWc": {
    title: "External static within this much of design, when that is more",
    unit: "in. w.c.",
    seed: 0.1,
    min: 0,
    max: 0.5,
    decimals: 2,
    basis: ACCA_5,
  },
  "airflow.frictionRateMin": {
    title: "Lowest usable friction rate",
    unit: "in. w.c. per 100 ft",
    seed: 0.06,
    min: 0.01,
    max: 0.2,
    decimals: 2,
    basis: MANUAL_D,
  },
  "airflow.frictionRateMax": {
    title: "Highest usable friction rate",
    unit: "in. w.c. per 100 ft",
    seed: 0.18,
    min: 0.05,
    max: 0.5,
    decimals: 2,
    basis: MANUAL_D,
  },
  "airflow.fanGradeOneWPerCfm": {
    title: "Fan power per airflow, highest of grade I",
    unit: "W/cfm",
    seed: 0.45,
    min: 0.05,
    max: 2,
    decimals: 2,
    basis: RESNET_310,
  },
  "airflow.fanGradeTwoWPerCfm": {
    title: "Fan power per airflow, highest of grade II",
    unit: "W/cfm",
    seed: 0.58,
    min: 0.05,
    max: 2,
    decimals: 2,
    basis: RESNET_310,
  },
  "airflow.cfmPerTonMin": {
    title: "Lowest airflow per ton of capacity as set, cooling in a humid climate",
    unit: "cfm/ton",
    seed: 300,
    min: 150,
    max: 450,
    decimals: 0,
    basis: PRACTICE,
  },
  "airflow.cfmPerTonMax": {
    title: "Highest airflow per ton of capacity as set, cooling in a humid climate",
    unit: "cfm/ton",
    seed: 400,
    min: 200,
    max: 600,
    decimals: 0,
    basis: PRACTICE,
  },
  "airflow.coilFrostF": {
    title: "Lowest coil surface temperature without frost",
    unit: "°F",
    seed: 32,
    min: 28,
    max: 45,
    decimals: 0,
    basis: FREEZING,
  },
  "airflow.unknownAccuracyBandPct": {
    title: "Airflow or static pressure of unknown accuracy: no verdict within this share of a limit",
    unit: "%",
    seed: 10,
    min: 0,
    max: 50,
    decimals: 0,
    basis: PRACTICE,
  },
} as const satisfies Record<string, LimitDefinition>;
