import { defineFields, type InputsOf, number, reference, text } from "../fields";

const SETTINGS = "Settings";
const STATIC = "Static pressure at the design airflow";

/** Airflow settings and the duct system they work against. Version 1. */
export const airflowSetupFields = defineFields({
  firstStageAirflowSetting: reference({
    label: "Airflow setting, first stage",
    group: SETTINGS,
    to: "airflow setting",
  }),
  secondStageAirflowSetting: reference({
    label: "Airflow setting, second stage",
    group: SETTINGS,
    to: "airflow setting",
    neededToSign: true,
    help: "The full-capacity setting; the only one on single-stage equipment.",
  }),
  designExternalStaticInWc: number({
    label: "External static pressure expected",
    unit: "in. w.c.",
    min: 0.02,
    max: 2,
    decimals: 2,
    group: STATIC,
    neededToSign: true,
  }),
  supplyDropInWc: number({
    label: "Supply duct share",
    unit: "in. w.c.",
    min: 0,
    max: 1.5,
    decimals: 2,
    group: STATIC,
  }),
  returnDropInWc: number({
    label: "Return duct share",
    unit: "in. w.c.",
    min: 0,
    max: 1.5,
    decimals: 2,
    group: STATIC,
  }),
  filterDropInWc: number({
    label: "Filter drop, clean",
    unit: "in. w.c.",
    min: 0,
    max: 1.5,
    decimals: 2,
    group: STATIC,
  }),
  filterLoadedDropInWc: number({
    label: "Filter drop when due for change",
    unit: "in. w.c.",
    min: 0,
    max: 2,
    decimals: 2,
    group: STATIC,
    help: "From the filter's maker. With it the fan table shows what a loaded filter does to the airflow.",
  }),
  coilDropInWc: number({
    label: "Wet coil drop when outside the fan table",
    unit: "in. w.c.",
    min: 0,
    max: 1.5,
    decimals: 2,
    group: STATIC,
  }),
  otherDropInWc: number({
    label: "Other components",
    unit: "in. w.c.",
    min: 0,
    max: 1.5,
    decimals: 2,
    group: STATIC,
  }),
  totalEffectiveLengthFt: number({
    label: "Total effective length",
    unit: "ft",
    min: 20,
    max: 1_500,
    decimals: 0,
    group: STATIC,
  }),
  notes: text({ label: "Notes", group: SETTINGS }),
  deviations: text({ label: "Reasons for departing from a limit", group: "Departures", maxLength: 4_000 }),
});

export type AirflowSetupInputs = InputsOf<typeof airflowSetupFields>;
