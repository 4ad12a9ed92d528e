import type { ControlModel } from "@/lib/domain/catalog";

/** Thermostats with the labels their invented makers print, as a company would record them. */
export const twoStageThermostat: Omit<ControlModel, "id"> = {
  maker: "Tarnwick Demo Controls",
  name: "Tarnwick T2",
  demoData: true,
  data: {
    stages: 2,
    makerLabels: {
      firstStageStartOffsetF: "Menu 11: cool start gap",
      secondStageStartOffsetF: "Menu 12: boost start gap",
      minimumCompressorRunMin: "Menu 21: shortest run",
      minimumCompressorRestMin: "Menu 22: shortest pause",
      stepBackToFirstStage: "Menu 14: return from boost",
      coolingPastSetpointF: "Menu 31: dry-on depth",
      fanRunOnAfterCoolingS: "Menu 41: fan tail",
      fanBetweenCalls: "Menu 42: idle fan",
      indoorTemperatureCorrectionF: "Menu 51: room trim",
      indoorHumidityCorrectionPct: "Menu 52: moisture trim",
    },
  },
};

export const oneStageThermostat: Omit<ControlModel, "id"> = {
  maker: "Tarnwick Demo Controls",
  name: "Tarnwick T1",
  demoData: true,
  data: {
    stages: 1,
    makerLabels: {
      firstStageStartOffsetF: "Option A: start gap",
      minimumCompressorRunMin: "Option B: shortest run",
      minimumCompressorRestMin: "Option C: shortest pause",
      fanRunOnAfterCoolingS: "Option F: fan tail",
      fanBetweenCalls: "Option G: idle fan",
    },
  },
};
