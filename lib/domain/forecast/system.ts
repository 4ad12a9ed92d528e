import type { SystemModel } from "@/lib/engineering/simulation";
import type { EquipmentModel } from "../catalog";
import { airflowAsSet, type SetAirflow } from "../evaluate/airflow-as-set";
import { type Derived, type JobContext, valueIfKnown } from "../evaluate/context";
import { stageCount } from "../evaluate/controls";
import { derive } from "../evaluate/derive";
import { heatingAt } from "../evaluate/heating";
import type { Assuming } from "./assumptions";
import { type CapacitySetting, coolingSide, type Heat, type StageAsSet } from "./cooling-side";
import { emptyFields, type ForecastMissing, type ForecastPart, missingField, problem } from "./missing";

/** A house heated by something else than this system is kept warm; its fuel is not counted. */
const OTHER_HEAT_OVER_LOAD = 2;

/** The equipment as selected and set, as the year's loop takes it. */
export function forecastSystem(context: JobContext, assume: Assuming): ForecastPart<SystemModel> {
  const { model, inputs } = context;
  const selection = inputs.equipment_selection;
  if (model === null)
    return { ready: false, missing: [missingField("equipment_selection", "equipmentModelId")] };
  const setting = model.data.capacitySettings.find((one) => one.name === selection.capacitySetting);
  if (setting === undefined)
    return { ready: false, missing: [missingField("equipment_selection", "capacitySetting")] };
  const colderCoil = inputs.control_setup.colderCoilCooling === true;
  const stages = stagesAsSet(context, setting);
  const heats = heating(context, model);
  if (!stages.ready || !heats.ready) {
    return {
      ready: false,
      missing: [...(stages.ready ? [] : stages.missing), ...(heats.ready ? [] : heats.missing)],
    };
  }
  const built = derive({}, () => coolingSide({ model, setting, colderCoil }, stages.value, assume));
  if (!built.known) {
    const at = { stage: "airflow_setup", field: "secondStageAirflowSetting" } as const;
    return { ready: false, missing: [problem(built.problem ?? "The equipment has no year.", at)] };
  }
  return { ready: true, value: { ...built.value, ...heats.value } };
}

/** The stages the thermostat can call, first stage first. */
function stagesAsSet(context: JobContext, setting: CapacitySetting): ForecastPart<readonly StageAsSet[]> {
  const { model, inputs, controlStages } = context;
  const set = airflowAsSet(model, inputs.airflow_setup);
  const two =
    stageCount(context) === 2 &&
    controlStages !== 1 &&
    (model?.data.heldCoil !== null || setting.firstStageTable !== null);
  const missing = [
    ...notSet(context, set.second, ["secondStageAirflowSetting", "designExternalStaticInWc"]),
    ...(two && set.second.known ? notSet(context, set.first, ["firstStageAirflowSetting"]) : []),
  ];
  const second = valueIfKnown(set.second);
  const first = valueIfKnown(set.first);
  if (missing.length > 0 || second === null || (two && first === null)) return { ready: false, missing };
  const full = { airflow: second, table: setting.name };
  return {
    ready: true,
    value:
      two && first !== null
        ? [{ airflow: first, table: setting.firstStageTable ?? setting.name }, full]
        : [full],
  };
}

function notSet(
  { inputs }: JobContext,
  airflow: Derived<SetAirflow>,
  fields: readonly ("firstStageAirflowSetting" | "secondStageAirflowSetting" | "designExternalStaticInWc")[],
): readonly ForecastMissing[] {
  if (airflow.known) return [];
  if (airflow.problem === null) return emptyFields(inputs, "airflow_setup", fields);
  return [
    problem(airflow.problem, { stage: "airflow_setup", field: fields[0] ?? "secondStageAirflowSetting" }),
  ];
}

function heating({ inputs }: JobContext, model: EquipmentModel): ForecastPart<Heat> {
  const { capacitySetting, auxiliaryHeatKw } = inputs.equipment_selection;
  const heatPumpAt17FBtuh = heatingAt(model, capacitySetting, 17);
  const heatPumpAt47FBtuh = heatingAt(model, capacitySetting, 47);
  if (heatPumpAt17FBtuh === null || heatPumpAt47FBtuh === null) {
    const other = OTHER_HEAT_OVER_LOAD * (inputs.load_summary.heatingBtuh ?? 0);
    return { ready: true, value: { heatPumpAt17FBtuh: other, heatPumpAt47FBtuh: other, auxiliaryKw: 0 } };
  }
  return auxiliaryHeatKw === null
    ? {
        ready: false,
        missing: [missingField("equipment_selection", "auxiliaryHeatKw", "0 when there is none")],
      }
    : { ready: true, value: { heatPumpAt17FBtuh, heatPumpAt47FBtuh, auxiliaryKw: auxiliaryHeatKw } };
}
