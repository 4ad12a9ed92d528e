import type { Basis, Rule } from "../findings";

const FINDINGS_TEST = "tests/engineering/airflow/findings.test.ts";

const published = (source: string): Basis => ({
  kind: "published source",
  source,
  certainty: "recalled",
});
const MAKER: Basis = {
  kind: "maker's data",
  source: "Maker's instructions for this equipment",
  certainty: "published",
};
const PRACTICE: Basis = {
  kind: "common practice, no source",
  source: "common practice, no source",
  certainty: "practice",
};

/** What airflow setup checks, with what each check rests on. */
export const airflowRules = {
  measuredAgainstDesign: {
    id: "airflow.measured-against-design",
    title: "Airflow against design",
    equation: "measured cfm / design cfm within 1 ± good %; named fair within 1 ± fair %",
    basis: published("ANSI/RESNET/ICC 310, blower airflow grades"),
    limits: ["airflow.goodPct", "airflow.fairPct", "airflow.unknownAccuracyBandPct"],
    checkedBy: FINDINGS_TEST,
  },
  staticAgainstMaximum: {
    id: "airflow.static-against-maximum",
    title: "Static pressure against the maker's maximum",
    equation: "measured external static ≤ maker's maximum",
    basis: published("ANSI/ACCA 5 QI-2015: not above the maker's maximum"),
    limits: ["airflow.unknownAccuracyBandPct"],
    checkedBy: FINDINGS_TEST,
  },
  staticAgainstDesign: {
    id: "airflow.static-against-design",
    title: "Static pressure against design",
    equation: "|measured − design| ≤ the larger of 25 % of design and 0.10 in. w.c.",
    basis: published("ANSI/ACCA 5 QI-2015: within 25 % or 0.10 in. w.c. of design"),
    limits: ["airflow.staticDesignPct", "airflow.staticDesignInWc", "airflow.unknownAccuracyBandPct"],
    checkedBy: FINDINGS_TEST,
  },
  frictionRate: {
    id: "airflow.friction-rate",
    title: "Friction rate the ducts are left with",
    equation: "FR = available · 100 / TEL, between lowest and highest usable rate",
    basis: published("ANSI/ACCA 1 Manual D, friction rate worksheet"),
    limits: ["airflow.frictionRateMin", "airflow.frictionRateMax"],
    checkedBy: FINDINGS_TEST,
  },
  cfmPerTon: {
    id: "airflow.cfm-per-ton",
    title: "Airflow per ton of capacity as set",
    equation: "cfm · 12,000 / capacity as set, between the company's limits",
    basis: PRACTICE,
    limits: ["airflow.cfmPerTonMin", "airflow.cfmPerTonMax", "airflow.unknownAccuracyBandPct"],
    checkedBy: FINDINGS_TEST,
  },
  makersMinimum: {
    id: "airflow.makers-minimum",
    title: "Airflow against the maker's minimum",
    equation: "measured cfm ≥ maker's minimum for this stage",
    basis: MAKER,
    limits: ["airflow.unknownAccuracyBandPct"],
    checkedBy: FINDINGS_TEST,
  },
  flowPlate: {
    id: "airflow.flow-plate",
    title: "Airflow by a flow plate, corrected for the plate",
    equation: "plate cfm · √(supply static with the filter / with the plate) = airflow entered, within 1 %",
    basis: {
      kind: "physics",
      source:
        "Ducts that stay as they are: pressure goes with the square of airflow; the method is from memory",
      certainty: "recalled",
    },
    limits: [],
    checkedBy: "tests/engineering/airflow/flow-plate.test.ts",
  },
  electricHeatMinimum: {
    id: "airflow.electric-heat-minimum",
    title: "Airflow over electric heat",
    equation: "measured cfm with electric heat on ≥ maker's minimum for the heater",
    basis: MAKER,
    limits: ["airflow.unknownAccuracyBandPct"],
    checkedBy: FINDINGS_TEST,
  },
  coilFrost: {
    id: "airflow.coil-frost",
    title: "Coil stays above frost",
    equation: "coldest coil surface temperature ≥ frost limit",
    basis: {
      kind: "physics",
      source: "Water freezes at 32 °F; a coil surface below it collects frost",
      certainty: "computed",
    },
    limits: ["airflow.coilFrostF", "airflow.unknownAccuracyBandPct"],
    checkedBy: FINDINGS_TEST,
  },
  fanEfficacy: {
    id: "airflow.fan-efficacy",
    title: "Fan power per airflow",
    equation: "fan W / cfm ≤ highest of grade II",
    basis: published("ANSI/RESNET/ICC 310, blower fan watt draw grades"),
    limits: ["airflow.fanGradeOneWPerCfm", "airflow.fanGradeTwoWPerCfm", "airflow.unknownAccuracyBandPct"],
    checkedBy: FINDINGS_TEST,
  },
} as const satisfies Record<string, Rule>;
