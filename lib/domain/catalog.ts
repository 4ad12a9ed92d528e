import { z } from "zod";
import type { ControlModelId, EquipmentModelId, InstrumentId } from "./ids";

export const COMPRESSOR_KINDS = [
  "single_speed",
  "two_stage",
  "variable_speed",
  "coil_temperature_held",
] as const;
export type CompressorKind = (typeof COMPRESSOR_KINDS)[number];

export const COMPRESSOR_KIND_NAMES: Readonly<Record<CompressorKind, string>> = {
  single_speed: "single speed",
  two_stage: "two-stage",
  variable_speed: "variable speed",
  coil_temperature_held: "variable speed that holds a coil temperature",
};

const positive = z.number().positive();

/** What an equipment model holds beside its tables. Everything the maker does not publish is `null`. */
export const equipmentDataSchema = z.object({
  /** Airflow at which the maker rates it, cfm. */
  ratedAirflowCfm: positive,
  /**
   * Capacity settings of the outdoor unit, smallest first; a plain unit has one. `name` names its rows of the
   * performance table, `firstStageTable` those of its first stage where the maker prints them apart.
   */
  capacitySettings: z
    .array(z.object({ name: z.string(), tons: positive, firstStageTable: z.string().nullable() }))
    .min(1),
  limits: z.object({
    maxExternalStaticInWc: positive.nullable(),
    minimumAirflowCfm: positive.nullable(),
    electricHeatMinimumAirflowCfm: positive.nullable(),
  }),
  lineSet: z
    .object({ includedLengthFt: z.number().min(0), addOzPerFt: z.number().min(0), factoryChargeLb: positive })
    .nullable(),
  targets: z.object({ subcoolingF: positive.nullable(), superheatF: positive.nullable() }),
  /** The maker's own label for each board setting, as the company recorded it for its crews. */
  boardLabels: z.record(z.string(), z.string()).optional(),
  /** Only for a compressor that holds a coil temperature: there airflow decides capacity, and no table can say it all. */
  heldCoil: z
    .object({
      ratedTotalBtuh: positive,
      ratedSensibleRatio: z.number().min(0.4).max(1),
      heldTemperatureF: z.number().min(20).max(60),
      /** How much lower the colder-coil setting holds it, °F. */
      colderCoilByF: z.number().min(0).max(15),
      /** Coil surface over evaporating temperature at the rated point, °F. */
      approachAtRatedF: z.number().min(0).max(25),
      frostLimitF: z.number().min(20).max(40),
      /** Least capacity without cycling, as a share of the most at the same outdoor temperature. */
      minimumCapacityShare: z.number().min(0.05).max(1),
      /** Most the compressor gives by outdoor temperature, all settings at full. */
      fullCapacity: z.array(z.object({ outdoorDbF: z.number(), capacityBtuh: positive })).min(1),
      /** Minutes the compressor needs to come down after a stage change. */
      settlingMin: z.number().min(0).max(60),
    })
    .nullable(),
});
export type EquipmentData = z.infer<typeof equipmentDataSchema>;

/** One row of the maker's expanded performance data. */
export type PerformanceRow = {
  readonly capacitySetting: string;
  readonly mode: "cooling" | "heating";
  readonly outdoorDbF: number;
  /** `null` in heating rows. */
  readonly enteringWbF: number | null;
  readonly enteringDbF: number;
  readonly airflowCfm: number;
  readonly totalBtuh: number;
  /** `null` in heating rows. */
  readonly sensibleBtuh: number | null;
  readonly powerW: number | null;
};

/** One row of the maker's fan table. */
export type FanRow = {
  readonly airflowSetting: string;
  readonly externalStaticInWc: number;
  readonly airflowCfm: number;
  readonly powerW: number | null;
};

/** One version of an equipment model. A job keeps the version it was designed with. */
export type EquipmentModel = {
  readonly id: EquipmentModelId;
  readonly familyId: string;
  readonly version: number;
  readonly maker: string;
  readonly name: string;
  readonly modelNumber: string;
  readonly compressorKind: CompressorKind;
  readonly nominalTons: number;
  readonly refrigerant: string;
  /** True for the invented models of the demo. */
  readonly demoData: boolean;
  readonly data: EquipmentData;
  readonly performance: readonly PerformanceRow[];
  readonly fan: readonly FanRow[];
};

/** The setting names of our own, each with the label the maker prints, as the company recorded it. */
export const controlDataSchema = z.object({
  stages: z.union([z.literal(1), z.literal(2)]),
  makerLabels: z.record(z.string(), z.string()),
});
export type ControlData = z.infer<typeof controlDataSchema>;

/** The settings of the board, by the key of the stage field that holds each. */
export const BOARD_SETTINGS = {
  capacitySetting: "Capacity setting",
  capacityAdjustmentByBoard: "Capacity adjustment by the board",
  colderCoilCooling: "Colder-coil cooling",
  firstStageAirflowSetting: "Airflow setting, first stage",
  secondStageAirflowSetting: "Airflow setting, second stage",
} as const;

export type ControlModel = {
  readonly id: ControlModelId;
  readonly maker: string;
  readonly name: string;
  readonly demoData: boolean;
  readonly data: ControlData;
};

export const MEASURED_QUANTITIES = [
  "dry bulb",
  "wet bulb",
  "relative humidity",
  "airflow",
  "static pressure",
  "refrigerant pressure",
  "line temperature",
  "voltage",
  "current",
  "power",
  "weight",
] as const;
export type MeasuredQuantity = (typeof MEASURED_QUANTITIES)[number];

/** Accuracy of one quantity: ± `plusMinus` and ± `percentOfReading`, added. */
export const accuracySchema = z.array(
  z.object({
    quantity: z.enum(MEASURED_QUANTITIES),
    unit: z.string(),
    plusMinus: z.number().min(0),
    percentOfReading: z.number().min(0).max(50),
    statedAs: z.enum(["limits", "standard uncertainty"]),
  }),
);
export type Accuracy = z.infer<typeof accuracySchema>[number];

export type Instrument = {
  readonly id: InstrumentId;
  readonly name: string;
  readonly kind: string;
  readonly serialNumber: string;
  readonly accuracy: readonly Accuracy[];
  readonly calibratedOn: string | null;
  readonly calibrationDueOn: string | null;
  /** Off the lists: it is not offered for a new reading. Left out while it is on them. */
  readonly retired?: boolean;
};
