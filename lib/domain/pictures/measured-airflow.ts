import type { Evaluation, JobContext } from "../evaluate";
import { airflowByMethod, airflowSettingOf } from "../evaluate/airflow-by-method";
import { valueIfKnown } from "../evaluate/context";
import { externalStatic, type StartupStageKey } from "../evaluate/startup-readings";
import { curvesOf, limitOf } from "./duct-curve";

/**
 * The static measured at one stage on the curve of its airflow setting, beside the point it was designed for. `null` when
 * the airflow does not come by the fan table, or is not known yet.
 */
export function measuredAirflowPicture(context: JobContext, { results }: Evaluation, stage: StartupStageKey) {
  const { model, inputs } = context;
  const setting = airflowSettingOf(context, stage);
  const staticInWc = externalStatic(stage, inputs.startup_record);
  const isByTable = inputs.startup_record[`${stage}AirflowMethod`] === "static table";
  const airflowCfm = isByTable ? valueIfKnown(airflowByMethod(context, stage)) : null;
  if (model === null || setting === null || staticInWc === null || airflowCfm === null) return null;
  const designed = designedPoint(context, results, stage);
  const measured = { setting, ducts: "measured", chosen: true, airflowCfm, externalStaticInWc: staticInWc };
  return {
    // The one curve: five names side by side do not fit a phone.
    settings: curvesOf(model, [setting]).filter(({ chosen }) => chosen),
    ducts: [],
    meets: [
      { ...measured, powerW: null },
      ...(designed === null
        ? []
        : [{ ...designed, setting: designed.setting, ducts: "designed", chosen: false, powerW: null }]),
    ],
    remarks: [
      designed === null
        ? "What was designed is not in the records."
        : `Designed: ${Math.round(designed.airflowCfm)} cfm against ${designed.externalStaticInWc.toFixed(2)} in. w.c.`,
    ],
    limit: limitOf(model),
  };
}

type Point = { readonly setting: string; readonly airflowCfm: number; readonly externalStaticInWc: number };

/** Full capacity is held against what the load asks for; the first stage against what it was set to, as in the findings. */
function designedPoint(
  { inputs }: JobContext,
  { designCfm, airflow }: Evaluation["results"],
  stage: StartupStageKey,
): Point | null {
  if (stage === "first") return valueIfKnown(airflow.first);
  const externalStaticInWc = inputs.airflow_setup.designExternalStaticInWc;
  const airflowCfm = valueIfKnown(designCfm);
  if (airflowCfm === null || externalStaticInWc === null) return null;
  return { setting: "design", airflowCfm, externalStaticInWc };
}
