import { choice, defineFields, type NumberFieldDef, number, reference, yesNo } from "../fields";
import { controlSetupFields } from "./control-setup";

const LEFT = "Controls left set to";
const THERMOSTAT = "Thermostat against a trusted instrument";
const WALK = "Customer walk-through";

const { fanBetweenCalls } = controlSetupFields;

/** A setting as left has the limits of the setting as designed; unlike it, it is not asked for before signing. */
const asLeft = ({ unit, min, max, decimals, label }: NumberFieldDef) =>
  number({ label: `${label}, as left`, unit, min, max, decimals, group: LEFT });

/** Control settings as the crew left them, the thermostat's sensors checked, and what the customer was shown. */
export const startupLeftFields = defineFields({
  leftCoolingSetpointF: asLeft(controlSetupFields.coolingSetpointF),
  leftFirstStageStartOffsetF: asLeft(controlSetupFields.firstStageStartOffsetF),
  leftSecondStageStartOffsetF: asLeft(controlSetupFields.secondStageStartOffsetF),
  leftMinimumCompressorRunMin: asLeft(controlSetupFields.minimumCompressorRunMin),
  leftMinimumCompressorRestMin: asLeft(controlSetupFields.minimumCompressorRestMin),
  leftStepBackToFirstStage: yesNo({ label: "Step back to first stage, as left", group: LEFT }),
  leftCoolingPastSetpointF: asLeft(controlSetupFields.coolingPastSetpointF),
  leftFanRunOnAfterCoolingS: asLeft(controlSetupFields.fanRunOnAfterCoolingS),
  leftFanBetweenCalls: choice({
    label: `${fanBetweenCalls.label}, as left`,
    group: LEFT,
    options: fanBetweenCalls.options,
  }),
  leftFanBetweenCallsMinPerH: asLeft(controlSetupFields.fanBetweenCallsMinPerH),
  leftCapacityAdjustmentByBoard: yesNo({ label: "Capacity adjustment by the board, as left", group: LEFT }),
  leftColderCoilCooling: yesNo({ label: "Colder-coil cooling, as left", group: LEFT }),
  thermostatReadsF: number({
    label: "Thermostat shows",
    unit: "°F",
    min: 40,
    max: 110,
    decimals: 1,
    group: THERMOSTAT,
  }),
  trustedReadsF: number({
    label: "Trusted thermometer beside it shows",
    unit: "°F",
    min: 40,
    max: 110,
    decimals: 1,
    group: THERMOSTAT,
    help: "Hang it beside the thermostat for ten minutes, out of sun and supply air.",
  }),
  thermostatReadsRhPct: number({
    label: "Thermostat shows humidity",
    unit: "%",
    min: 0,
    max: 100,
    decimals: 0,
    group: THERMOSTAT,
  }),
  trustedReadsRhPct: number({
    label: "Trusted hygrometer beside it shows",
    unit: "%",
    min: 0,
    max: 100,
    decimals: 0,
    group: THERMOSTAT,
  }),
  trustedInstrumentId: reference({ label: "Trusted instrument", group: THERMOSTAT, to: "instrument" }),
  leftTemperatureCorrectionF: asLeft(controlSetupFields.indoorTemperatureCorrectionF),
  leftHumidityCorrectionPct: asLeft(controlSetupFields.indoorHumidityCorrectionPct),
  shownThermostat: yesNo({ label: "Shown: setpoint and modes of the thermostat", group: WALK }),
  shownFan: yesNo({ label: "Shown: why the fan stays off between calls", group: WALK }),
  shownFilter: yesNo({ label: "Shown: the filter, how to change it and how often", group: WALK }),
  shownDrain: yesNo({ label: "Shown: the drain and what a wet pan means", group: WALK }),
  shownPower: yesNo({ label: "Shown: the breaker and the outdoor disconnect", group: WALK }),
  shownHumidity: yesNo({ label: "Shown: which humidity to expect, and when to call", group: WALK }),
});
