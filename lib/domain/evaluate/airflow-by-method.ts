import { densityRatio } from "@/lib/engineering/air";
import {
  airflowFromStaticTable,
  flowPlateAirflowCfm,
  temperatureRiseAirflowCfm,
} from "@/lib/engineering/airflow";
import { fanTable } from "./airflow-as-set";
import { type Derived, type JobContext, unknown } from "./context";
import { derive } from "./derive";
import { externalStatic, type StartupStageKey } from "./startup-readings";

/** The airflow of one stage that the other readings give by the method chosen; not known for what is read off directly. */
export function airflowByMethod(context: JobContext, stage: StartupStageKey): Derived<number> {
  const inputs = context.inputs.startup_record;
  const method = inputs[`${stage}AirflowMethod`];
  if (method === "static table") return fromStaticTable(context, stage);
  if (method === "temperature rise") {
    const given = {
      [`${stage}HeatRiseF`]: inputs[`${stage}HeatRiseF`],
      heaterVolts: inputs.heaterVolts,
      heaterAmps: inputs.heaterAmps,
      elevationFt: context.elevationFt,
    };
    return derive(given, () =>
      temperatureRiseAirflowCfm({
        heat: { volts: inputs.heaterVolts ?? Number.NaN, amps: inputs.heaterAmps ?? Number.NaN },
        temperatureRiseF: inputs[`${stage}HeatRiseF`] ?? Number.NaN,
        densityRatio: densityRatio(context.elevationFt ?? Number.NaN),
      }),
    );
  }
  if (method === "flow plate") {
    const given = {
      [`${stage}PlateCfm`]: inputs[`${stage}PlateCfm`],
      [`${stage}SupplyStaticInWc`]: inputs[`${stage}SupplyStaticInWc`],
      [`${stage}PlateSupplyStaticInWc`]: inputs[`${stage}PlateSupplyStaticInWc`],
    };
    return derive(given, () =>
      flowPlateAirflowCfm({
        plateCfm: inputs[`${stage}PlateCfm`] ?? Number.NaN,
        supplyStaticInWc: inputs[`${stage}SupplyStaticInWc`] ?? Number.NaN,
        supplyStaticWithPlateInWc: inputs[`${stage}PlateSupplyStaticInWc`] ?? Number.NaN,
      }),
    );
  }
  return unknown([`${stage}AirflowMethod`]);
}

/** The airflow setting of a stage: as it was left, or as designed while nobody has said otherwise. */
export function airflowSettingOf({ inputs }: JobContext, stage: StartupStageKey): string | null {
  const { startup_record: left, airflow_setup: designed } = inputs;
  return stage === "second"
    ? (left.leftSecondStageAirflowSetting ?? designed.secondStageAirflowSetting)
    : (left.leftFirstStageAirflowSetting ?? designed.firstStageAirflowSetting);
}

function fromStaticTable(context: JobContext, stage: StartupStageKey): Derived<number> {
  const { model, inputs: records } = context;
  const inputs = records.startup_record;
  const setting = airflowSettingOf(context, stage);
  if (!model) return unknown(["equipmentModelId"]);
  return derive({ setting, externalStaticInWc: externalStatic(stage, inputs) }, (given) =>
    airflowFromStaticTable({ table: fanTable(model), ...given }),
  );
}
