import {
  type Instrument as EngineInstrument,
  READINGS,
  type ReadingName,
  type Readings,
} from "@/lib/engineering/startup";
import type { Instrument, MeasuredQuantity } from "../catalog";
import type { StartupRecordInputs } from "../stages/startup-record";

export type StartupStageKey = "first" | "second";

/** The field of the startup record that holds a reading of one stage. */
export function fieldOfReading(stage: StartupStageKey, name: ReadingName): keyof StartupRecordInputs | null {
  const own = STAGE_FIELDS[name];
  if (own !== undefined) return `${stage}${own}` as keyof StartupRecordInputs;
  return SHARED_FIELDS[name] ?? (stage === "second" ? FULL_CAPACITY_FIELDS[name] : undefined) ?? null;
}

const STAGE_FIELDS: Readonly<Partial<Record<ReadingName, string>>> = {
  airflowCfm: "AirflowCfm",
  returnDryBulbF: "ReturnDbF",
  returnWetBulbF: "ReturnWbF",
  returnRelativeHumidityPct: "ReturnRhPct",
  supplyDryBulbF: "SupplyDbF",
  supplyWetBulbF: "SupplyWbF",
  supplyRelativeHumidityPct: "SupplyRhPct",
  suctionPressurePsig: "SuctionPressurePsig",
  suctionLineF: "SuctionLineF",
  liquidPressurePsig: "LiquidPressurePsig",
  liquidLineF: "LiquidLineF",
  fanPowerW: "FanPowerW",
  condensateLb: "CondensateLb",
};

const SHARED_FIELDS: Readonly<Partial<Record<ReadingName, keyof StartupRecordInputs>>> = {
  outdoorDryBulbF: "outdoorDbF",
};

/** Read once, at full capacity: what the first stage draws is another current. */
const FULL_CAPACITY_FIELDS: Readonly<Partial<Record<ReadingName, keyof StartupRecordInputs>>> = {
  outdoorUnitVolts: "supplyVoltage",
  outdoorUnitAmps: "outdoorUnitAmps",
  outdoorUnitPowerW: "outdoorUnitPowerW",
};

/** Which instrument field and which of its accuracies belongs to a reading. */
const TAKEN_WITH: Readonly<
  Partial<Record<ReadingName, readonly [keyof StartupRecordInputs, MeasuredQuantity]>>
> = {
  airflowCfm: ["airflowInstrumentId", "airflow"],
  returnDryBulbF: ["airTemperatureInstrumentId", "dry bulb"],
  returnWetBulbF: ["airTemperatureInstrumentId", "wet bulb"],
  returnRelativeHumidityPct: ["airTemperatureInstrumentId", "relative humidity"],
  supplyDryBulbF: ["airTemperatureInstrumentId", "dry bulb"],
  supplyWetBulbF: ["airTemperatureInstrumentId", "wet bulb"],
  supplyRelativeHumidityPct: ["airTemperatureInstrumentId", "relative humidity"],
  externalStaticInWc: ["staticInstrumentId", "static pressure"],
  suctionPressurePsig: ["refrigerantInstrumentId", "refrigerant pressure"],
  liquidPressurePsig: ["refrigerantInstrumentId", "refrigerant pressure"],
  suctionLineF: ["refrigerantInstrumentId", "line temperature"],
  liquidLineF: ["refrigerantInstrumentId", "line temperature"],
  outdoorUnitVolts: ["electricalInstrumentId", "voltage"],
  outdoorUnitAmps: ["electricalInstrumentId", "current"],
  outdoorUnitPowerW: ["electricalInstrumentId", "power"],
  fanPowerW: ["electricalInstrumentId", "power"],
  condensateLb: ["scaleInstrumentId", "weight"],
};

/** The readings of one stage, each with the accuracy of the instrument it was taken with. */
export function readingsOf(
  stage: StartupStageKey,
  inputs: StartupRecordInputs,
  instruments: readonly Instrument[],
): Readings {
  const names = Object.keys(READINGS) as readonly ReadingName[];
  const entries = names.map((name) => {
    const value =
      name === "externalStaticInWc"
        ? externalStatic(stage, inputs)
        : valueOfField(inputs, fieldOfReading(stage, name));
    return [
      name,
      value === null ? null : { value, instrument: instrumentFor(name, value, inputs, instruments) },
    ];
  });
  return Object.fromEntries(entries) as Readings;
}

/** External static pressure: the return's (read as a size) plus the supply's, in. w.c. */
export function externalStatic(stage: StartupStageKey, inputs: StartupRecordInputs): number | null {
  const back = inputs[`${stage}ReturnStaticInWc`];
  const supply = inputs[`${stage}SupplyStaticInWc`];
  return back === null || supply === null ? null : back + supply;
}

function valueOfField(inputs: StartupRecordInputs, field: keyof StartupRecordInputs | null): number | null {
  const value = field === null ? null : inputs[field];
  return typeof value === "number" ? value : null;
}

function instrumentFor(
  name: ReadingName,
  value: number,
  inputs: StartupRecordInputs,
  instruments: readonly Instrument[],
): EngineInstrument | null {
  const [field, quantity] = TAKEN_WITH[name] ?? [];
  if (field === undefined) return null;
  const instrument = instruments.find((one) => one.id === inputs[field]);
  const accuracy = instrument?.accuracy.find((one) => one.quantity === quantity);
  if (!instrument || !accuracy) return null;
  // External static is the sum of two readings of one manometer, whose zero is off the same way in both.
  const taken = name === "externalStaticInWc" ? 2 : 1;
  return {
    instrumentId: instrument.id,
    accuracy: taken * accuracy.plusMinus + (accuracy.percentOfReading / 100) * Math.abs(value),
    accuracyKind: accuracy.statedAs === "limits" ? "rectangular" : "standard",
    unit: READINGS[name].unit,
    calibrationDue: instrument.calibrationDueOn,
  };
}
