import { controlFindings, type HouseAfternoon, type WetCoil } from "@/lib/engineering/controls";
import type { Finding } from "@/lib/engineering/findings";
import { SYSTEM_ASSUMPTIONS } from "../forecast/assumptions";
import { controlSetupFields } from "../stages/control-setup";
import type { AirflowAsSet } from "./airflow-as-set";
import { type JobContext, valueIfKnown } from "./context";
import type { EquipmentResults } from "./equipment";
import { byTable, withFields } from "./field-names";

/**
 * Heat that warms the air and what follows it quickly, per ft² of floor. A stated assumption: light furnishings and
 * the first layer of the walls; common practice, no source.
 */
export const LIGHT_CAPACITANCE_BTU_PER_F_FT2 = 1.5;
/** Above this outdoor temperature a house with people and appliances in it needs cooling. Common practice, no source. */
export const ZERO_COOLING_LOAD_F = 65;
/** Half the daily range of a hot humid afternoon, °F. Common practice, no source. */
export const HALF_DAILY_RANGE_F = 10;

/** Control settings against company limits, each other, and what they do on this house's hot afternoon. */
export function controlSetupFindings(
  context: JobContext,
  airflow: AirflowAsSet,
  equipment: EquipmentResults,
): readonly Finding[] {
  const inputs = context.inputs.control_setup;
  const stages = stageCount(context);
  const first = valueIfKnown(airflow.first)?.airflowCfm;
  const second = valueIfKnown(airflow.second)?.airflowCfm;
  const found = controlFindings({
    settings: {
      firstStageStartOffsetF: inputs.firstStageStartOffsetF,
      secondStageStartOffsetF: inputs.secondStageStartOffsetF,
      minimumCompressorRunMin: inputs.minimumCompressorRunMin,
      minimumCompressorRestMin: inputs.minimumCompressorRestMin,
      stepBackToFirstStage: inputs.stepBackToFirstStage,
      fanRunOnAfterCoolingS: inputs.fanRunOnAfterCoolingS,
      coolingPastSetpointF: inputs.coolingPastSetpointF,
      indoorTemperatureCorrectionF: inputs.indoorTemperatureCorrectionF,
      indoorHumidityCorrectionPct: inputs.indoorHumidityCorrectionPct,
      fanBetweenCalls: inputs.fanBetweenCalls,
      fanBetweenCallsMinPerH:
        inputs.fanBetweenCalls === "minutes per hour" ? inputs.fanBetweenCallsMinPerH : null,
    },
    board: {
      capacitySettingTons: equipment.tons,
      capacityAdjustmentByBoard: inputs.capacityAdjustmentByBoard,
      colderCoilCooling: inputs.colderCoilCooling,
      airflowSettingCfmByStage:
        second === undefined ? null : stages === 2 && first !== undefined ? [first, second] : [second],
    },
    selectedCapacityTons: equipment.tons,
    equipmentStages: stages,
    coolingStagesWired: context.controlStages,
    fanStages: stages,
    fanStagesWired: inputs.fanWiredFor === null ? null : inputs.fanWiredFor === "one stage" ? 1 : 2,
    temperatureReadings: readings(inputs.trustedTemperatureF, inputs.thermostatTemperatureF),
    humidityReadings: readings(inputs.trustedHumidityPct, inputs.thermostatHumidityPct),
    house: hotAfternoon(context, equipment),
    coil: wetCoil(context),
    limits: context.limits,
  });
  return withFields(found, byTable(FIELDS, controlSetupFields));
}

const FIELDS: Readonly<Record<string, string | null>> = {
  coolingStagesWired: "controlModelId",
  fanStagesWired: "fanWiredFor",
  temperatureReadings: "trustedTemperatureF",
  humidityReadings: "trustedHumidityPct",
  capacitySettingTons: null,
  selectedCapacityTons: null,
  house: null,
};

/** No maker prints how its coil takes up and gives back water: what the forecast assumes of it, or what was set there. */
function wetCoil({ forecast }: JobContext): WetCoil {
  const set = forecast?.inputs.changed.system ?? {};
  const number = (name: "startTimeConstantS" | "coilWetS" | "coilEvaporationRatio") =>
    set[name] ?? SYSTEM_ASSUMPTIONS[name].value;
  return {
    timeConstantS: number("startTimeConstantS"),
    wetTimeS: number("coilWetS"),
    gamma: number("coilEvaporationRatio"),
    knownBy: "the coil as the forecast assumes it",
  };
}

/** Two stages when the equipment has a first stage of its own or a variable compressor; `null` before it is chosen. */
export function stageCount({ model }: JobContext): 1 | 2 | null {
  if (!model) return null;
  return model.compressorKind === "single_speed" ? 1 : 2;
}

/** A hot design-day afternoon of this house, from its load summary and the capacity as set. `null` until both are known. */
export function hotAfternoon(context: JobContext, equipment: EquipmentResults): HouseAfternoon | null {
  const { load_summary: load, control_setup: controls } = context.inputs;
  const full = valueIfKnown(equipment.full);
  const first = valueIfKnown(equipment.first);
  const stages = stageCount(context);
  const { sensibleCoolingBtuh, indoorCoolingDbF, outdoorCoolingDbF, floorAreaFt2 } = load;
  if (
    !full ||
    sensibleCoolingBtuh === null ||
    indoorCoolingDbF === null ||
    outdoorCoolingDbF === null ||
    floorAreaFt2 === null
  )
    return null;
  if (outdoorCoolingDbF - ZERO_COOLING_LOAD_F < 1 || (stages === 2 && !first)) return null;
  if (first && first.sensibleBtuh > full.sensibleBtuh) return null;
  const capacity = ({ sensibleBtuh, latentBtuh }: { sensibleBtuh: number; latentBtuh: number }) => ({
    sensibleBtuh,
    latentBtuh,
  });
  return {
    setpointF: controls.coolingSetpointF ?? indoorCoolingDbF,
    loadIndoorF: indoorCoolingDbF,
    designOutdoorF: outdoorCoolingDbF,
    designSensibleBtuh: sensibleCoolingBtuh,
    partLoadOutdoorF: ZERO_COOLING_LOAD_F,
    partLoadSensibleBtuh: 0,
    capacitanceBtuPerF: floorAreaFt2 * LIGHT_CAPACITANCE_BTU_PER_F_FT2,
    stages: stages === 2 && first ? [capacity(first), capacity(full)] : [capacity(full)],
    outdoor: {
      kind: "sinusoid",
      meanF: outdoorCoolingDbF - HALF_DAILY_RANGE_F,
      amplitudeF: HALF_DAILY_RANGE_F,
      peakMinute: 240,
    },
    durationMin: 480,
  };
}

function readings(trusted: number | null, thermostat: number | null) {
  return trusted === null || thermostat === null ? null : { trusted, thermostatUncorrected: thermostat };
}
