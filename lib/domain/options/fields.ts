import { z } from "zod";
import { schemaOfFields } from "../field-schema";
import { emptyInputs, type FieldDefs, type InputsOf } from "../fields";
import { airflowSetupFields } from "../stages/airflow-setup";
import { controlSetupFields } from "../stages/control-setup";
import { equipmentSelectionFields } from "../stages/equipment-selection";
import { loadSummaryFields } from "../stages/load-summary";

const { equipmentModelId, capacitySetting, auxiliaryHeatKw } = equipmentSelectionFields;
const { dehumidifierPintsPerDay, dehumidifierAtHousePintsPerDay } = equipmentSelectionFields;
const { firstStageAirflowSetting, secondStageAirflowSetting, designExternalStaticInWc } = airflowSetupFields;
const { colderCoilCooling, firstStageStartOffsetF, secondStageStartOffsetF } = controlSetupFields;
const { fanBetweenCalls, fanBetweenCallsMinPerH } = controlSetupFields;
const { ventilationCfm } = loadSummaryFields;

const SYSTEM = { group: "System" } as const;
const AIRFLOW = { group: "Airflow" } as const;
const AIR = { group: "Outdoor air and drying" } as const;
const CONTROLS = { group: "Controls, where they differ from the control setup" } as const;

/** What an option decides: the fields of the stage records themselves, so that choosing one fills them. Version 1. */
export const optionFields = {
  equipmentModelId: { ...equipmentModelId, ...SYSTEM },
  capacitySetting: { ...capacitySetting, ...SYSTEM },
  auxiliaryHeatKw: { ...auxiliaryHeatKw, ...SYSTEM },
  secondStageAirflowSetting: { ...secondStageAirflowSetting, ...AIRFLOW },
  firstStageAirflowSetting: { ...firstStageAirflowSetting, ...AIRFLOW },
  designExternalStaticInWc: { ...designExternalStaticInWc, ...AIRFLOW },
  ventilationCfm: { ...ventilationCfm, ...AIR },
  dehumidifierPintsPerDay: { ...dehumidifierPintsPerDay, ...AIR },
  dehumidifierAtHousePintsPerDay: { ...dehumidifierAtHousePintsPerDay, ...AIR },
  colderCoilCooling: { ...colderCoilCooling, ...CONTROLS },
  firstStageStartOffsetF: { ...firstStageStartOffsetF, ...CONTROLS, neededToSign: false },
  secondStageStartOffsetF: { ...secondStageStartOffsetF, ...CONTROLS, neededToSign: false },
  fanBetweenCalls: { ...fanBetweenCalls, ...CONTROLS, neededToSign: false },
  fanBetweenCallsMinPerH: { ...fanBetweenCallsMinPerH, ...CONTROLS },
} as const satisfies FieldDefs;

export type OptionInputs = InputsOf<typeof optionFields>;
export type OptionField = keyof OptionInputs;

/** The version of the fields that this code writes. */
export const OPTION_VERSION = 1;
/** More side by side cannot be read. */
export const MOST_OPTIONS = 6;
/** Fewer are no comparison: none is chosen before there are so many. */
export const LEAST_OPTIONS = 2;

export const optionSchema = schemaOfFields(optionFields) as z.ZodType<OptionInputs>;

/** Inputs stored by this or an older version; a field that did not exist then is `null`. */
export function readStoredOption(version: number, stored: unknown): OptionInputs {
  if (version > OPTION_VERSION)
    throw new Error(`An option was saved by a newer version (${version}) of this application.`);
  const kept = z.record(z.string(), z.unknown()).parse(stored);
  const empty = emptyInputs(optionFields);
  return Object.fromEntries(
    Object.keys(empty).map((key) => [key, kept[key] ?? null]),
  ) as unknown as OptionInputs;
}
