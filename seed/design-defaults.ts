import type { ControlSetupInputs } from "@/lib/domain/stages/control-setup";
import type { LoadSummaryInputs } from "@/lib/domain/stages/load-summary";
import type { StartupRecordInputs } from "@/lib/domain/stages/startup-record";
import type { DemoWorld } from "./world";

const INDOORS = { indoorCoolingDbF: 75, indoorCoolingRhPct: 50, indoorHeatingDbF: 70 } as const;

/** Design conditions of the Gulf coast; close to the weather file's own. */
export const GULF_COAST: Partial<LoadSummaryInputs> = {
  ...INDOORS,
  outdoorCoolingDbF: 94,
  outdoorCoolingWbF: 77,
  outdoorHeatingDbF: 31,
  wetMildDewPointF: 77,
  wetMildDbF: 83,
  humidityLimitPct: 55,
  safetyFactorPct: 0,
  duplicatedGainsBtuh: 0,
  windShieldingFactor: 0.4,
  leakageKnownBy: "measured",
  ductsInside: true,
  ductLoadBtuh: 0,
  householdPintsPerDay: 9,
  groundPintsPerDay: 0,
};

/** A circuit tested with nitrogen, pumped down and held. A tight system at 84 °F reads 451.7 psig: (450 + 14.7)·543.67/541.67 − 14.7. */
export const TIGHT_CIRCUIT: Partial<StartupRecordInputs> = {
  circuitOpened: true,
  pressureTestStartPsig: 450,
  pressureTestStartF: 82,
  pressureTestEndPsig: 451.5,
  pressureTestEndF: 84,
  evacuationReachedMicrons: 210,
  evacuationHoldMin: 15,
  makerHoldMin: 10,
  smallestRoomFt2: 260,
  releaseHeightFt: 6,
};

/** Design conditions of central Indiana; close to the weather file's own. */
export const CENTRAL_INDIANA: Partial<LoadSummaryInputs> = {
  ...GULF_COAST,
  outdoorCoolingDbF: 90,
  outdoorCoolingWbF: 75,
  outdoorHeatingDbF: 2,
  wetMildDewPointF: 74,
  wetMildDbF: 82.5,
  windShieldingFactor: 0.55,
};

/** Settings that keep a house dry. */
export function dryControls(world: DemoWorld): Partial<ControlSetupInputs> {
  return {
    controlModelId: world.controls.twoStage,
    coolingSetpointF: 75,
    firstStageStartOffsetF: 1,
    secondStageStartOffsetF: 2,
    minimumCompressorRunMin: 10,
    minimumCompressorRestMin: 5,
    stepBackToFirstStage: true,
    coolingPastSetpointF: 0,
    fanRunOnAfterCoolingS: 0,
    fanBetweenCalls: "off",
    fanWiredFor: "two stages",
    indoorTemperatureCorrectionF: -0.3,
    thermostatTemperatureF: 75.4,
    trustedTemperatureF: 75.1,
    indoorHumidityCorrectionPct: 2,
    thermostatHumidityPct: 48,
    trustedHumidityPct: 50,
    capacityAdjustmentByBoard: false,
    colderCoilCooling: false,
  };
}

/** The instruments of a careful startup. */
export function goodInstruments({ instruments }: DemoWorld): Partial<StartupRecordInputs> {
  return {
    airTemperatureInstrumentId: instruments.psychrometer,
    airflowInstrumentId: instruments.flowPlate,
    staticInstrumentId: instruments.manometer,
    refrigerantInstrumentId: instruments.gauges,
    electricalInstrumentId: instruments.meter,
    scaleInstrumentId: instruments.scale,
    nameplateVolts: 240,
  };
}
