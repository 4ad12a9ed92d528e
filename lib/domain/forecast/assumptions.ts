import type { AssumptionName } from "@/lib/engineering/simulation";

const PRACTICE = "common practice, no source";

/** A number the records do not hold, beside those of the house: visible, and changeable between `min` and `max`. */
export type SystemAssumption = {
  readonly name: SystemAssumptionName;
  readonly label: string;
  readonly value: number;
  readonly unit: string;
  readonly why: string;
};

type Declared = {
  readonly label: string;
  readonly unit: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly decimals: number;
  readonly why: string;
};

/** What is assumed of equipment and controls where no record says otherwise. */
export const SYSTEM_ASSUMPTIONS = {
  coolingSetpointF: declared("Cooling setpoint", "°F", 75, 68, 82, 1, "from the control setup"),
  heatingSetpointF: declared("Heating setpoint", "°F", 70, 60, 74, 1, "indoor design temperature, heating"),
  dryAbovePct: declared(
    "Cooling goes past the setpoint above",
    "%",
    60,
    40,
    70,
    0,
    "the humidity limit of the load summary",
  ),
  dehumidifierStartBelowLimitPct: declared(
    "Dehumidifier starts below the limit by",
    "%",
    4,
    0,
    15,
    0,
    `it has to begin before the limit is reached; ${PRACTICE}`,
  ),
  dehumidifierPintsPerKwh: declared(
    "Dehumidifier's pints for each kWh",
    "pint/kWh",
    3.7,
    2,
    8,
    1,
    "1.77 L/kWh, 10 CFR 430.32 for whole-home units (from memory)",
  ),
  fanWPerCfm: declared(
    "Fan power",
    "W/cfm",
    0.365,
    0.1,
    0.8,
    3,
    "365 W for each 1,000 cfm, the default of AHRI 210/240 (from memory), where the fan table has no power",
  ),
  coolingBtuhPerWAt95F: declared(
    "Cooling for each watt at 95 °F outdoors",
    "Btu/(W·h)",
    11,
    6,
    25,
    1,
    `the maker's table has no power; ${PRACTICE}`,
  ),
  coolingBtuhPerWAt82F: declared(
    "Cooling for each watt at 82 °F outdoors",
    "Btu/(W·h)",
    13.5,
    6,
    30,
    1,
    `the maker's table has no power; ${PRACTICE}`,
  ),
  startTimeConstantS: declared(
    "Time constant of a start",
    "s",
    45,
    5,
    180,
    0,
    "Henderson & Rengarajan 1996, as given in the EnergyPlus Engineering Reference (published)",
  ),
  coilWetS: declared(
    "Running until the coil drips",
    "s",
    1_000,
    200,
    2_000,
    0,
    "Henderson & Rengarajan 1996, as given in the EnergyPlus Engineering Reference (published)",
  ),
  coilEvaporationRatio: declared(
    "First evaporation over steady removal",
    "ratio",
    1.5,
    0,
    3,
    1,
    "Henderson & Rengarajan 1996, as given in the EnergyPlus Engineering Reference (published)",
  ),
  noCoolingBelowF: declared("No cooling below, outdoors", "°F", 55, 30, 70, 0, PRACTICE),
} as const satisfies Readonly<Record<string, Declared>>;

export type SystemAssumptionName = keyof typeof SYSTEM_ASSUMPTIONS;

/** How an assumption of the house is called, and between what a slider lets it be put. */
export const HOUSE_ASSUMPTION_WORDS: Readonly<
  Record<
    AssumptionName,
    { readonly label: string; readonly min: number; readonly max: number; readonly decimals: number }
  >
> = {
  ceilingHeightFt: { label: "Ceiling height", min: 7, max: 14, decimals: 1 },
  airChangesAt50Pa: { label: "Leakage, air changes at 50 Pa", min: 0.5, max: 20, decimals: 1 },
  designWindMph: { label: "Wind on the design day", min: 0, max: 20, decimals: 1 },
  occupants: { label: "People", min: 0, max: 12, decimals: 0 },
  personSensibleBtuh: { label: "Heat of a person", min: 150, max: 350, decimals: 0 },
  applianceBtuh: { label: "Heat of appliances", min: 500, max: 8_000, decimals: 0 },
  householdPintsPerDay: { label: "Water given off inside, without breath", min: 0, max: 60, decimals: 1 },
  airCapacitanceBtuPerFFt2: { label: "Heat held by air and furnishings", min: 0.4, max: 3, decimals: 1 },
  massCapacitanceBtuPerFFt2: { label: "Heat held by the mass", min: 1, max: 15, decimals: 1 },
  massCouplingBtuhPerFFt2: { label: "Between air and mass", min: 0.5, max: 4, decimals: 1 },
  moistureCapacitanceMultiple: {
    label: "Water held by furnishings, times the air's",
    min: 2,
    max: 40,
    decimals: 0,
  },
  moistureExchangeH: { label: "Hours in which furnishings follow", min: 1, max: 48, decimals: 0 },
};

/** What somebody set otherwise than assumed: from then on it counts as known. */
export type ForecastChanges = {
  readonly house: Partial<Readonly<Record<AssumptionName, number>>>;
  readonly system: Partial<Readonly<Record<SystemAssumptionName, number>>>;
};
export const NO_CHANGES: ForecastChanges = { house: {}, system: {} };

/** Collects what is assumed while a system is put together. */
export function assuming(changed: ForecastChanges["system"]) {
  const used: SystemAssumption[] = [];
  return {
    used: used as readonly SystemAssumption[],
    /** The number in force; `from` is what a record says, with where. */
    take: (
      name: SystemAssumptionName,
      from: { readonly value: number; readonly why: string } | null = null,
    ) => {
      const { label, unit, value, why } = SYSTEM_ASSUMPTIONS[name];
      const set = changed[name];
      const taken =
        set === undefined
          ? (from ?? { value, why })
          : { value: set, why: `set here; was ${from?.why ?? why}` };
      if (!used.some((one) => one.name === name)) used.push({ name, label, unit, ...taken });
      return taken.value;
    },
  };
}
export type Assuming = ReturnType<typeof assuming>;

function declared(
  label: string,
  unit: string,
  value: number,
  min: number,
  max: number,
  decimals: number,
  why: string,
): Declared {
  return { label, unit, value, min, max, decimals, why };
}
