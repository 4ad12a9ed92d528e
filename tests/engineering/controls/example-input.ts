import {
  type BoardSettings,
  type ControlFindingsInput,
  type ControlSettings,
  controlsLimits,
  type HouseAfternoon,
} from "@/lib/engineering/controls";
import { seedLimits } from "@/lib/engineering/limit-definition";

/** A two-stage house: 24,000 Btu/h at 95 °F, 12,000 at 80 °F, 800 Btu/h per °F between. */
export const house: HouseAfternoon = {
  setpointF: 75,
  loadIndoorF: 75,
  designOutdoorF: 95,
  designSensibleBtuh: 24_000,
  partLoadOutdoorF: 80,
  partLoadSensibleBtuh: 12_000,
  capacitanceBtuPerF: 8_000,
  stages: [
    { sensibleBtuh: 18_000, latentBtuh: 6_000 },
    { sensibleBtuh: 27_000, latentBtuh: 8_000 },
  ],
  outdoor: { kind: "sinusoid", meanF: 85, amplitudeF: 10, peakMinute: 300 },
  durationMin: 600,
};

export const settings: ControlSettings = {
  firstStageStartOffsetF: 1,
  secondStageStartOffsetF: 2,
  minimumCompressorRunMin: 10,
  minimumCompressorRestMin: 5,
  stepBackToFirstStage: true,
  fanRunOnAfterCoolingS: 0,
  coolingPastSetpointF: 0,
  indoorTemperatureCorrectionF: 0.5,
  indoorHumidityCorrectionPct: -3,
  fanBetweenCalls: "off",
  fanBetweenCallsMinPerH: null,
};

export const board: BoardSettings = {
  capacitySettingTons: 3,
  capacityAdjustmentByBoard: false,
  colderCoilCooling: false,
  airflowSettingCfmByStage: [700, 1_000],
};

/** Everything entered, nothing wrong. */
export const input: ControlFindingsInput = {
  settings,
  board,
  selectedCapacityTons: 3,
  equipmentStages: 2,
  coolingStagesWired: 2,
  fanStages: 2,
  fanStagesWired: 2,
  temperatureReadings: { trusted: 75.5, thermostatUncorrected: 75 },
  humidityReadings: { trusted: 50, thermostatUncorrected: 53 },
  house,
  // A published parameter set of the moisture section: Nmax 3, τ 60 s, t_wet 720 s, γ 0.6.
  coil: { timeConstantS: 60, wetTimeS: 720, gamma: 0.6, knownBy: "coil as assumed" },
  limits: seedLimits(controlsLimits),
};
