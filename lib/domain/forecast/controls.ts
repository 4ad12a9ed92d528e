import type { DehumidifierModel, VentilationModel, YearControls } from "@/lib/engineering/simulation";
import type { JobContext } from "../evaluate/context";
import { stageCount } from "../evaluate/controls";
import { derive } from "../evaluate/derive";
import type { Assuming } from "./assumptions";
import { emptyFields, type ForecastPart, missingField, problem } from "./missing";

const NEEDED = [
  "firstStageStartOffsetF",
  "minimumCompressorRunMin",
  "minimumCompressorRestMin",
  "stepBackToFirstStage",
  "coolingPastSetpointF",
  "fanRunOnAfterCoolingS",
  "fanBetweenCalls",
] as const;

/** Thermostat settings of the controls stage. */
export function forecastControls(context: JobContext, assume: Assuming): ForecastPart<YearControls> {
  const { control_setup: set, load_summary: load } = context.inputs;
  const two = stageCount(context) === 2 && context.controlStages !== 1;
  const minutes = set.fanBetweenCalls === "minutes per hour";
  const needed = [
    ...NEEDED,
    ...(two ? (["secondStageStartOffsetF"] as const) : []),
    ...(minutes ? (["fanBetweenCallsMinPerH"] as const) : []),
  ];
  const missing = [
    ...emptyFields(context.inputs, "control_setup", needed),
    ...emptyFields(context.inputs, "load_summary", [
      "indoorCoolingDbF",
      "indoorHeatingDbF",
      "humidityLimitPct",
    ]),
  ];
  const made = derive(
    {
      firstStageStartOffsetF: set.firstStageStartOffsetF,
      minimumCompressorRunMin: set.minimumCompressorRunMin,
      minimumCompressorRestMin: set.minimumCompressorRestMin,
      stepBackToFirstStage: set.stepBackToFirstStage,
      coolingPastSetpointF: set.coolingPastSetpointF,
      fanRunOnAfterCoolingS: set.fanRunOnAfterCoolingS,
      fanBetweenCalls: set.fanBetweenCalls,
      designDbF: load.indoorCoolingDbF,
      heatingDbF: load.indoorHeatingDbF,
      limitPct: load.humidityLimitPct,
    },
    ({ designDbF, heatingDbF, limitPct, ...settings }): YearControls => ({
      settings: {
        ...settings,
        secondStageStartOffsetF: set.secondStageStartOffsetF ?? settings.firstStageStartOffsetF,
        fanBetweenCallsMinPerH: minutes ? set.fanBetweenCallsMinPerH : null,
        // The room is taken as the thermostat's trusted reading: a correction that is right changes nothing.
        indoorTemperatureCorrectionF: 0,
        indoorHumidityCorrectionPct: 0,
      },
      coolingSetpointF: assume.take(
        "coolingSetpointF",
        set.coolingSetpointF === null
          ? { value: designDbF, why: "indoor design temperature, cooling" }
          : { value: set.coolingSetpointF, why: "from the control setup" },
      ),
      heatingSetpointF: assume.take("heatingSetpointF", {
        value: heatingDbF,
        why: "indoor design temperature, heating",
      }),
      dryAbovePct: assume.take("dryAbovePct", {
        value: limitPct,
        why: "the humidity limit of the load summary",
      }),
    }),
  );
  if (missing.length > 0) return { ready: false, missing };
  if (!made.known) {
    const at = { stage: "control_setup", field: "firstStageStartOffsetF" } as const;
    return { ready: false, missing: [problem(made.problem ?? "The control setup is not complete.", at)] };
  }
  return { ready: true, value: made.value };
}

/** Mechanical outdoor air, all day: the records know no clock for it. */
export function forecastVentilation({ inputs }: JobContext): ForecastPart<VentilationModel> {
  const { ventilationCfm } = inputs.load_summary;
  if (ventilationCfm === null)
    return {
      ready: false,
      missing: [missingField("load_summary", "ventilationCfm", "0 when there is none")],
    };
  return {
    ready: true,
    value: ventilationCfm === 0 ? { kind: "none" } : { kind: "continuous", airflowCfm: ventilationCfm },
  };
}

const BAND_PCT = 3;

/** The supplemental dehumidifier with its capacity at the house's own design air: a rating is for more humid air. */
export function forecastDehumidifier(
  { inputs }: JobContext,
  assume: Assuming,
): ForecastPart<DehumidifierModel | null> {
  const { dehumidifierPintsPerDay: rated, dehumidifierAtHousePintsPerDay: atHouse } =
    inputs.equipment_selection;
  const { indoorCoolingDbF, indoorCoolingRhPct, humidityLimitPct } = inputs.load_summary;
  if (rated === null) {
    const none = "0 when there is none";
    return { ready: false, missing: [missingField("equipment_selection", "dehumidifierPintsPerDay", none)] };
  }
  if (rated === 0) return { ready: true, value: null };
  const missing = [
    ...emptyFields(inputs, "equipment_selection", ["dehumidifierAtHousePintsPerDay"]),
    ...emptyFields(inputs, "load_summary", ["indoorCoolingDbF", "indoorCoolingRhPct", "humidityLimitPct"]),
  ];
  if (
    atHouse === null ||
    indoorCoolingDbF === null ||
    indoorCoolingRhPct === null ||
    humidityLimitPct === null
  )
    return { ready: false, missing };
  if (atHouse === 0) return { ready: true, value: null };
  const air = { dryBulbF: indoorCoolingDbF, relativeHumidityPct: indoorCoolingRhPct, humidityLimitPct };
  return { ready: true, value: dehumidifierAt(atHouse, air, assume) };
}

/** A dehumidifier of a capacity at the house's own design air. */
export function dehumidifierAt(
  pintsPerDay: number,
  air: {
    readonly dryBulbF: number;
    readonly relativeHumidityPct: number;
    readonly humidityLimitPct: number;
  },
  assume: Assuming,
): DehumidifierModel {
  const startAbovePct = air.humidityLimitPct - assume.take("dehumidifierStartBelowLimitPct");
  return {
    ratedPintsPerDay: pintsPerDay,
    ratedDbF: air.dryBulbF,
    ratedRhPct: air.relativeHumidityPct,
    powerW: (1_000 * pintsPerDay) / 24 / assume.take("dehumidifierPintsPerKwh"),
    startAbovePct,
    stopBelowPct: startAbovePct - BAND_PCT,
  };
}
