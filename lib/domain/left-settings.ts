import type { JobContext } from "./evaluate/context";
import type { PlainValue } from "./merge-fields";
import { hasTwoStages, type StartupKey } from "./startup-walk";

export type LeftSetting = {
  readonly key: StartupKey;
  readonly designed: PlainValue;
  /** The control's field whose label the maker prints. */
  readonly controlKey: string | null;
  /** What the equipment offers; `null` for a setting that is entered. */
  readonly options: readonly string[] | null;
};

const CONTROLS = [
  ["leftCoolingSetpointF", "coolingSetpointF"],
  ["leftFirstStageStartOffsetF", "firstStageStartOffsetF"],
  ["leftSecondStageStartOffsetF", "secondStageStartOffsetF"],
  ["leftMinimumCompressorRunMin", "minimumCompressorRunMin"],
  ["leftMinimumCompressorRestMin", "minimumCompressorRestMin"],
  ["leftStepBackToFirstStage", "stepBackToFirstStage"],
  ["leftCoolingPastSetpointF", "coolingPastSetpointF"],
  ["leftFanRunOnAfterCoolingS", "fanRunOnAfterCoolingS"],
  ["leftFanBetweenCalls", "fanBetweenCalls"],
  ["leftFanBetweenCallsMinPerH", "fanBetweenCallsMinPerH"],
  ["leftCapacityAdjustmentByBoard", "capacityAdjustmentByBoard"],
  ["leftColderCoilCooling", "colderCoilCooling"],
  ["leftTemperatureCorrectionF", "indoorTemperatureCorrectionF"],
  ["leftHumidityCorrectionPct", "indoorHumidityCorrectionPct"],
] as const;

/** Every setting the crew leaves, beside what design asks for. */
export function leftSettings(context: JobContext): readonly LeftSetting[] {
  const { equipment_selection: selection, airflow_setup: airflow, control_setup: controls } = context.inputs;
  const capacities = context.model?.data.capacitySettings.map((one) => one.name) ?? [];
  const airflows = [...new Set(context.model?.fan.map((row) => row.airflowSetting) ?? [])];
  const offered = (key: StartupKey, designed: PlainValue, options: readonly string[]): LeftSetting => ({
    key,
    designed,
    controlKey: null,
    options,
  });
  return [
    offered("leftCapacitySetting", selection.capacitySetting, capacities),
    offered("leftSecondStageAirflowSetting", airflow.secondStageAirflowSetting, airflows),
    ...(hasTwoStages(context)
      ? [offered("leftFirstStageAirflowSetting", airflow.firstStageAirflowSetting, airflows)]
      : []),
    ...CONTROLS.map(([key, controlKey]) => ({
      key,
      designed: controls[controlKey],
      controlKey,
      options: null,
    })),
  ];
}
