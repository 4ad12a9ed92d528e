import type { Basis, Rule } from "../findings";

const manualS: Basis = {
  kind: "published source",
  source: "ANSI/ACCA 3 Manual S-2014 (from memory, sure)",
  certainty: "recalled",
};
const physics: Basis = { kind: "physics", source: "balance of heat and water", certainty: "computed" };
const bypass: Basis = {
  kind: "published source",
  source: "EnergyPlus Engineering Reference, bypass factor of a direct-expansion coil",
  certainty: "published",
};

/** The rules of the equipment folder. */
export const equipmentRules = {
  performanceTable: {
    id: "equipment.performance-table",
    title: "Maker's expanded data at the job's conditions",
    equation: "linear between bracketing points, axis by axis, never beyond the table",
    basis: { kind: "maker's data", source: "the maker's expanded performance data", certainty: "computed" },
    limits: [],
    checkedBy: "tests/engineering/equipment/performance-table.test.ts",
  },
  totalCapacity: {
    id: "equipment.total-capacity",
    title: "Total cooling capacity against load",
    equation: "min ≤ total capacity / total load ≤ max for the kind of equipment",
    basis: manualS,
    limits: [
      "equipment.totalMinRatio",
      "equipment.totalMaxRatioSingleSpeed",
      "equipment.totalMaxRatioTwoStage",
      "equipment.totalMaxRatioVariableSpeed",
      "equipment.coldClimateExcessBtuh",
      "equipment.coldClimateDegreeDayRatio",
      "equipment.coldClimateSensibleRatio",
    ],
    checkedBy: "tests/engineering/equipment/sizing-findings.test.ts",
  },
  turnDown: {
    id: "equipment.turn-down",
    title: "Least capacity of a variable-speed heat pump sized to heating",
    equation: "least cooling capacity / cooling load ≤ the edition's limit, as entered by the company",
    basis: {
      kind: "company rule",
      source: "later edition of ANSI/ACCA 3 Manual S as entered by the company",
      certainty: "practice",
    },
    limits: [],
    checkedBy: "tests/engineering/equipment/sizing-findings.test.ts",
  },
  sensibleCapacity: {
    id: "equipment.sensible-capacity",
    title: "Sensible capacity against load",
    equation: "(sensible + half the excess latent) / sensible load ≥ min",
    basis: manualS,
    limits: ["equipment.sensibleMinRatio"],
    checkedBy: "tests/engineering/equipment/sizing-findings.test.ts",
  },
  latentCapacity: {
    id: "equipment.latent-capacity",
    title: "Latent capacity against load",
    equation: "latent capacity / latent load ≥ min",
    basis: manualS,
    limits: ["equipment.latentMinRatio", "equipment.latentWarningMinRatio"],
    checkedBy: "tests/engineering/equipment/sizing-findings.test.ts",
  },
  latentWarning: {
    id: "equipment.latent-warning",
    title: "Latent capacity a little below load",
    equation: "warning min ≤ latent capacity / latent load < min",
    basis: {
      kind: "published source",
      source: "ANSI/ACCA 3 Manual S-2014, latent capacity (from memory, verify against the standard)",
      certainty: "unverified",
    },
    limits: ["equipment.latentMinRatio", "equipment.latentWarningMinRatio"],
    checkedBy: "tests/engineering/equipment/sizing-findings.test.ts",
  },
  balancePoint: {
    id: "equipment.balance-point",
    title: "Balance point and auxiliary heat",
    equation: "capacity line through 17 and 47 °F meets the load line; aux kW = (load − capacity) / 3412",
    basis: physics,
    limits: [],
    checkedBy: "tests/engineering/equipment/heating.test.ts",
  },
  coilFromRating: {
    id: "equipment.coil-from-rating",
    title: "Coil from its rated point",
    equation: "BF = (h_out − h_adp) / (h_in − h_adp) = exp(−A0 / m)",
    basis: bypass,
    limits: [],
    checkedBy: "tests/engineering/equipment/coil-from-rating.test.ts",
  },
  coilTemperatureHeld: {
    id: "equipment.coil-temperature-held",
    title: "Capacity that follows airflow",
    equation:
      "h_out = h_in − (1 − BF)(h_in − h_sat(held temperature + approach)), within ceiling, minimum and frost limit",
    basis: bypass,
    limits: [],
    checkedBy: "tests/engineering/equipment/coil-temperature-held.test.ts",
  },
  capacityMap: {
    id: "equipment.capacity-map",
    title: "Airflow settings by capacity settings",
    equation: "each cell is one steady state, compared with the load by the sizing limits",
    basis: bypass,
    limits: [
      "equipment.totalMinRatio",
      "equipment.totalMaxRatioSingleSpeed",
      "equipment.totalMaxRatioTwoStage",
      "equipment.totalMaxRatioVariableSpeed",
      "equipment.sensibleMinRatio",
      "equipment.latentMinRatio",
    ],
    checkedBy: "tests/engineering/equipment/capacity-map.test.ts",
  },
  humidityCapability: {
    id: "equipment.humidity-capability",
    title: "Lowest indoor humidity the option can hold",
    equation: "latent / sensible of the coil at the indoor state = latent load / sensible load",
    basis: physics,
    limits: [],
    checkedBy: "tests/engineering/equipment/humidity-capability.test.ts",
  },
  stageDrop: {
    id: "equipment.stage-drop",
    title: "The minutes after the airflow drops",
    equation: "airflow steps down; capacity follows over the settling time; the coil is colder meanwhile",
    basis: {
      kind: "common practice, no source",
      source: "settling time of 15 to 16 minutes as seen in the field",
      certainty: "practice",
    },
    limits: [],
    checkedBy: "tests/engineering/equipment/stage-drop.test.ts",
  },
} as const satisfies Record<string, Rule>;
