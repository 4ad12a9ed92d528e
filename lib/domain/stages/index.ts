import { emptyInputs, type FieldDefs } from "../fields";
import { type AirflowSetupInputs, airflowSetupFields } from "./airflow-setup";
import { type ControlSetupInputs, controlSetupFields } from "./control-setup";
import { type EquipmentSelectionInputs, equipmentSelectionFields } from "./equipment-selection";
import { type HumidityReviewInputs, humidityReviewFields } from "./humidity-review";
import { STAGE_NAMES, type StageKey } from "./keys";
import { type LoadSummaryInputs, loadSummaryFields } from "./load-summary";
import { type StartupRecordInputs, startupRecordFields } from "./startup-record";

export * from "./keys";

export type StageInputs = {
  readonly load_summary: LoadSummaryInputs;
  readonly equipment_selection: EquipmentSelectionInputs;
  readonly airflow_setup: AirflowSetupInputs;
  readonly control_setup: ControlSetupInputs;
  readonly startup_record: StartupRecordInputs;
  readonly humidity_review: HumidityReviewInputs;
};

export const STAGE_FIELDS: Readonly<Record<StageKey, FieldDefs>> = {
  load_summary: loadSummaryFields,
  equipment_selection: equipmentSelectionFields,
  airflow_setup: airflowSetupFields,
  control_setup: controlSetupFields,
  startup_record: startupRecordFields,
  humidity_review: humidityReviewFields,
};

/** The version of each stage record's fields that this code writes. */
export const STAGE_VERSIONS: Readonly<Record<StageKey, number>> = {
  load_summary: 1,
  equipment_selection: 1,
  airflow_setup: 1,
  control_setup: 1,
  startup_record: 1,
  humidity_review: 1,
};

/** Inputs of a stage with nothing entered. */
export function emptyStage<S extends StageKey>(stage: S): StageInputs[S] {
  return emptyInputs(STAGE_FIELDS[stage]) as unknown as StageInputs[S];
}

/**
 * Reads inputs stored by this or an older version of the code. Fields that did not exist then are
 * `null`; a version newer than this code is refused rather than cut down.
 *
 * @throws Error when the stored version is newer than this code knows, or what is stored is no set of fields.
 */
export function readStoredInputs<S extends StageKey>(
  stage: S,
  version: number,
  stored: unknown,
): StageInputs[S] {
  if (version > STAGE_VERSIONS[stage]) {
    throw new Error(`${STAGE_NAMES[stage]} was saved by a newer version (${version}) of this application.`);
  }
  if (typeof stored !== "object" || stored === null || Array.isArray(stored))
    throw new Error(`${STAGE_NAMES[stage]}: what is stored is no set of fields.`);
  const kept: Readonly<Record<string, unknown>> = { ...stored };
  const known = Object.keys(STAGE_FIELDS[stage]).map((key) => [key, kept[key] ?? null]);
  return Object.fromEntries(known) as unknown as StageInputs[S];
}
