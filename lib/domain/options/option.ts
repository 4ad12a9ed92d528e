import type { EquipmentModel } from "../catalog";
import type { JobContext } from "../evaluate";
import type { OptionId } from "../ids";
import { STAGES, type StageInputs, type StageKey } from "../stages";
import { type OptionField, type OptionInputs, optionFields } from "./fields";

/** One candidate for a job, as it stands. */
export type Option = {
  readonly id: OptionId;
  readonly label: string;
  readonly position: number;
  /** Raised by every save: a save must name the one it started from. */
  readonly version: number;
  readonly inputs: OptionInputs;
  readonly updatedAt: string;
  readonly updatedByName: string;
};

/** The option chosen for a job, with the reason given then. */
export type OptionChoice = {
  readonly optionId: OptionId;
  readonly label: string;
  readonly reason: string;
  readonly at: string;
  readonly byName: string;
};

/** Which stage record each field of an option belongs to. */
export const STAGE_OF: Readonly<Record<OptionField, StageKey>> = {
  equipmentModelId: "equipment_selection",
  capacitySetting: "equipment_selection",
  auxiliaryHeatKw: "equipment_selection",
  dehumidifierPintsPerDay: "equipment_selection",
  dehumidifierAtHousePintsPerDay: "equipment_selection",
  firstStageAirflowSetting: "airflow_setup",
  secondStageAirflowSetting: "airflow_setup",
  designExternalStaticInWc: "airflow_setup",
  ventilationCfm: "load_summary",
  colderCoilCooling: "control_setup",
  firstStageStartOffsetF: "control_setup",
  secondStageStartOffsetF: "control_setup",
  fanBetweenCalls: "control_setup",
  fanBetweenCallsMinPerH: "control_setup",
};

/** Where an option says nothing, the record's own value stands: it belongs to the house and its controls, not to the system. */
const RECORD_STANDS: readonly StageKey[] = ["load_summary", "control_setup"];

/** What a job's records decide now, as an option. */
export function optionFromRecords(inputs: StageInputs): OptionInputs {
  const values = (Object.keys(optionFields) as OptionField[]).map((field) => [
    field,
    (inputs[STAGE_OF[field]] as Readonly<Record<string, unknown>>)[field] ?? null,
  ]);
  return Object.fromEntries(values) as unknown as OptionInputs;
}

/** A job's inputs as they would be with an option in place of what its records decide. */
export function inputsWithOption(inputs: StageInputs, option: OptionInputs): StageInputs {
  const entries = STAGES.map((stage) => {
    const said = (Object.keys(optionFields) as OptionField[])
      .filter((field) => STAGE_OF[field] === stage)
      .filter((field) => option[field] !== null || !RECORD_STANDS.includes(stage))
      .map((field) => [field, option[field]] as const);
    return [stage, { ...inputs[stage], ...Object.fromEntries(said) }];
  });
  return Object.fromEntries(entries) as unknown as StageInputs;
}

/**
 * The whole job as it would be with an option: what the evaluation, the sensitivities and a simulated year start from.
 *
 * @param model - The option's own equipment with its tables; `null` while none is chosen.
 */
export function optionContext(
  job: JobContext,
  option: OptionInputs,
  model: EquipmentModel | null,
): JobContext {
  return { ...job, model, inputs: inputsWithOption(job.inputs, option) };
}

/** The stage records an option would change, in order. */
export function stagesChangedBy(inputs: StageInputs, option: OptionInputs): readonly StageKey[] {
  const after = inputsWithOption(inputs, option);
  return STAGES.filter((stage) =>
    (Object.keys(optionFields) as OptionField[]).some((field) => {
      const at = (all: StageInputs) => (all[stage] as Readonly<Record<string, unknown>>)[field] ?? null;
      return STAGE_OF[field] === stage && at(inputs) !== at(after);
    }),
  );
}
