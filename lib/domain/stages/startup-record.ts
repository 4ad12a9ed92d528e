// Longer than usual because it is a plain list of fields, one block each.
import { choice, defineFields, type InputsOf, number, reference, text, yesNo } from "../fields";

const CONDITIONS = "Outdoor unit and conditions";
const LEFT = "Left set to";
const INSTRUMENTS = "Instruments";
const CLOSE = "Before leaving";

const METHODS = [
  { value: "static table", label: "static pressure and the maker's fan table" },
  { value: "flow plate", label: "flow plate or hood" },
  { value: "temperature rise", label: "temperature rise across electric heat" },
] as const;

/** Readings of one stage. `K` prefixes the keys, so that both stages use one definition. */
const stageReadings = <const P extends "first" | "second">(prefix: P, group: string, needed: boolean) => {
  const fields = {
    StabilisedMin: number({
      label: "Running steadily for",
      unit: "min",
      min: 0,
      max: 240,
      decimals: 0,
      group,
    }),
    AirflowCfm: number({
      label: "Airflow",
      unit: "cfm",
      min: 50,
      max: 5_000,
      decimals: 0,
      group,
      neededToSign: needed,
    }),
    AirflowMethod: choice({ label: "Airflow measured by", group, options: METHODS }),
    ReturnDbF: number({
      label: "Return dry bulb",
      unit: "°F",
      min: 40,
      max: 110,
      decimals: 1,
      group,
      neededToSign: needed,
    }),
    ReturnWbF: number({ label: "Return wet bulb", unit: "°F", min: 30, max: 100, decimals: 1, group }),
    ReturnRhPct: number({
      label: "Return relative humidity",
      unit: "%",
      min: 1,
      max: 100,
      decimals: 1,
      group,
    }),
    SupplyDbF: number({
      label: "Supply dry bulb",
      unit: "°F",
      min: 25,
      max: 150,
      decimals: 1,
      group,
      neededToSign: needed,
    }),
    SupplyWbF: number({ label: "Supply wet bulb", unit: "°F", min: 20, max: 120, decimals: 1, group }),
    SupplyRhPct: number({
      label: "Supply relative humidity",
      unit: "%",
      min: 1,
      max: 100,
      decimals: 1,
      group,
    }),
    ReturnStaticInWc: number({
      label: "Return static (size only)",
      unit: "in. w.c.",
      min: 0,
      max: 3,
      decimals: 2,
      group,
    }),
    SupplyStaticInWc: number({
      label: "Supply static",
      unit: "in. w.c.",
      min: 0,
      max: 3,
      decimals: 2,
      group,
    }),
    SuctionPressurePsig: number({
      label: "Suction pressure",
      unit: "psig",
      min: 0,
      max: 400,
      decimals: 1,
      group,
    }),
    SuctionLineF: number({
      label: "Suction line temperature",
      unit: "°F",
      min: -20,
      max: 120,
      decimals: 1,
      group,
    }),
    LiquidPressurePsig: number({
      label: "Liquid pressure",
      unit: "psig",
      min: 0,
      max: 700,
      decimals: 1,
      group,
    }),
    LiquidLineF: number({
      label: "Liquid line temperature",
      unit: "°F",
      min: 20,
      max: 180,
      decimals: 1,
      group,
    }),
    FanPowerW: number({ label: "Fan power", unit: "W", min: 5, max: 3_000, decimals: 0, group }),
    CondensateLb: number({
      label: "Water caught",
      unit: "lb",
      min: 0,
      max: 100,
      decimals: 2,
      group,
      help: "Weigh what leaves the drain after it runs steadily.",
    }),
    CondensateMin: number({
      label: "Minutes of catching",
      unit: "min",
      min: 1,
      max: 480,
      decimals: 0,
      group,
    }),
  } as const;
  type Fields = typeof fields;
  return Object.fromEntries(Object.entries(fields).map(([key, field]) => [`${prefix}${key}`, field])) as {
    readonly [K in keyof Fields & string as `${P}${K}`]: Fields[K];
  };
};

/** What was measured before leaving, per stage, and the settings as left. Version 1. */
export const startupRecordFields = defineFields({
  outdoorDbF: number({
    label: "Outdoor dry bulb at the unit",
    unit: "°F",
    min: -20,
    max: 130,
    decimals: 1,
    group: CONDITIONS,
    neededToSign: true,
  }),
  refrigerant: choice({
    label: "Refrigerant on the nameplate",
    group: CONDITIONS,
    neededToSign: true,
    options: [
      { value: "R-410A", label: "R-410A" },
      { value: "R-32", label: "R-32" },
      { value: "R-454B", label: "R-454B" },
      { value: "R-22", label: "R-22" },
      { value: "R-134a", label: "R-134a" },
    ],
  }),
  meteringDevice: choice({
    label: "Metering device",
    group: CONDITIONS,
    options: [
      { value: "expansion valve", label: "expansion valve" },
      { value: "fixed orifice", label: "fixed orifice" },
    ],
  }),
  targetSubcoolingF: number({
    label: "Maker's target subcooling",
    unit: "°F",
    min: 0,
    max: 40,
    decimals: 1,
    group: CONDITIONS,
  }),
  targetSuperheatF: number({
    label: "Maker's target superheat",
    unit: "°F",
    min: 0,
    max: 50,
    decimals: 1,
    group: CONDITIONS,
  }),
  supplyVoltage: number({
    label: "Voltage at the outdoor unit",
    unit: "V",
    min: 90,
    max: 520,
    decimals: 0,
    group: CONDITIONS,
  }),
  nameplateVolts: number({
    label: "Voltage on the nameplate",
    unit: "V",
    min: 100,
    max: 600,
    decimals: 0,
    group: CONDITIONS,
  }),
  outdoorUnitAmps: number({
    label: "Outdoor unit current",
    unit: "A",
    min: 0.1,
    max: 200,
    decimals: 1,
    group: CONDITIONS,
    help: "Both voltage and current at full capacity.",
  }),
  ratedAmps: number({
    label: "Rated current on the nameplate",
    unit: "A",
    min: 0.5,
    max: 200,
    decimals: 1,
    group: CONDITIONS,
  }),
  lineSetLengthFt: number({
    label: "Line set length",
    unit: "ft",
    min: 0,
    max: 300,
    decimals: 0,
    group: CONDITIONS,
  }),
  chargeAddedOz: number({
    label: "Charge added",
    unit: "oz",
    min: -300,
    max: 300,
    decimals: 1,
    group: CONDITIONS,
  }),
  evacuationMicrons: number({
    label: "Vacuum held at",
    unit: "microns",
    min: 1,
    max: 20_000,
    decimals: 0,
    group: CONDITIONS,
  }),
  ...stageReadings("second", "Full capacity (second stage)", true),
  ...stageReadings("first", "First stage", false),
  leftCapacitySetting: reference({ label: "Capacity setting as left", group: LEFT, to: "capacity setting" }),
  leftFirstStageAirflowSetting: reference({
    label: "Airflow setting as left, first stage",
    group: LEFT,
    to: "airflow setting",
  }),
  leftSecondStageAirflowSetting: reference({
    label: "Airflow setting as left, second stage",
    group: LEFT,
    to: "airflow setting",
  }),
  airTemperatureInstrumentId: reference({
    label: "Thermometer and hygrometer in the air",
    group: INSTRUMENTS,
    to: "instrument",
  }),
  airflowInstrumentId: reference({ label: "Airflow instrument", group: INSTRUMENTS, to: "instrument" }),
  staticInstrumentId: reference({
    label: "Static pressure instrument",
    group: INSTRUMENTS,
    to: "instrument",
  }),
  refrigerantInstrumentId: reference({ label: "Refrigerant gauges", group: INSTRUMENTS, to: "instrument" }),
  electricalInstrumentId: reference({
    label: "Electrical meter",
    group: INSTRUMENTS,
    to: "instrument",
  }),
  scaleInstrumentId: reference({ label: "Scale for the water", group: INSTRUMENTS, to: "instrument" }),
  supplyWarmerConfirmed: yesNo({
    label: "Supply is warmer than return, probes checked",
    group: CLOSE,
    help: "Only when the record asks.",
  }),
  walkThroughDone: yesNo({ label: "Customer shown how to run it", group: CLOSE }),
  notes: text({ label: "Notes", group: CLOSE }),
});

export type StartupRecordInputs = InputsOf<typeof startupRecordFields>;
