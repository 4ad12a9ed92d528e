import type {
  HeldCoilStage,
  HeldCoilSystem,
  HouseModel,
  YearControls,
  YearInput,
} from "@/lib/engineering/simulation";
import { parseEpw, type Weather } from "@/lib/engineering/weather";
import { houston } from "../weather/weather-files";

export const COASTAL: Weather = parseEpw(houston);

/** The coastal file with every dew point 25 °C lower: the same heat and sun over dry ground. */
export const DESERT: Weather = parseEpw(
  houston
    .split("\n")
    .map((line, row) => {
      if (row < 8 || line === "") return line;
      const cells = line.split(",");
      cells[7] = String(Number(cells[7]) - 25);
      return cells.join(",");
    })
    .join("\n"),
);

/** A flat day repeated: every channel steady, no sun. */
export function steadyWeather(hours: number, dryBulbF: number, humidityRatio: number): Weather {
  const flat = (value: number) => new Float64Array(hours).fill(value);
  return {
    ...COASTAL,
    hourCount: hours,
    month: new Uint8Array(hours).fill(7),
    day: new Uint8Array(hours).fill(1),
    hour: Uint8Array.from({ length: hours }, (_, hour) => (hour % 24) + 1),
    gaps: [],
    dryBulbF: flat(dryBulbF),
    humidityRatio: flat(humidityRatio),
    // Not given: what needs them has to find them from the humidity ratio.
    dewPointF: flat(Number.NaN),
    relativeHumidityPct: flat(Number.NaN),
    pressurePsia: flat(14.696),
    windMph: flat(0),
    windDirectionDeg: flat(0),
    skyInfraredBtuhPerFt2: flat(0),
    globalHorizontalBtuhPerFt2: flat(0),
    directNormalBtuhPerFt2: flat(0),
    diffuseHorizontalBtuhPerFt2: flat(0),
  };
}

const GAINS = Array.from({ length: 24 }, (_, hour) => (hour >= 7 && hour < 23 ? 3_200 : 1_600));
const WATER = Array.from({ length: 24 }, (_, hour) => (hour >= 6 && hour < 23 ? 0.6 : 0.3));

/** An invented house of 2,000 ft². */
export const HOUSE: HouseModel = {
  volumeFt3: 17_000,
  conductanceBtuhPerF: 420,
  airCapacitanceBtuPerF: 2_500,
  massCapacitanceBtuPerF: 9_000,
  massCouplingBtuhPerF: 3_000,
  apertures: [0, 90, 180, 270].map((azimuthDeg) => ({
    name: `wall ${azimuthDeg}`,
    tiltDeg: 90,
    azimuthDeg,
    areaFt2: 60,
    transmittance: 0.35,
  })),
  radiantShare: 0.5,
  leakageAreaIn2: 80,
  storeys: 1,
  shelterClass: 4,
  gainsBtuhByHour: GAINS,
  moistureLbPerHByHour: WATER,
  moistureCapacitanceMultiple: 15,
  moistureExchangeH: 8,
};

export const SETTINGS: YearControls["settings"] = {
  firstStageStartOffsetF: 0.5,
  secondStageStartOffsetF: 2,
  minimumCompressorRunMin: 3,
  minimumCompressorRestMin: 3,
  stepBackToFirstStage: false,
  fanRunOnAfterCoolingS: 0,
  coolingPastSetpointF: 0.5,
  indoorTemperatureCorrectionF: 0,
  indoorHumidityCorrectionPct: 0,
  fanBetweenCalls: "off",
  fanBetweenCallsMinPerH: null,
};

export function stageAt(airflowCfm: number, capacitySettingPct: number): HeldCoilStage {
  return {
    airflowCfm,
    heldTemperatureF: 45,
    capacitySettingPct,
    minimumCapacityBtuh: 9_000,
    fanW: airflowCfm * 0.4,
  };
}

/** The three-ton coil of the equipment tests: 80/67 °F, 1,200 cfm, 36,000 Btu/h at 0.75 gives A0 and an approach of 10.4 °F. */
export const SYSTEM: HeldCoilSystem = {
  a0LbPerH: 9_500,
  approach: { kind: "grows with capacity", ratedApproachF: 10.4, ratedTotalBtuh: 36_000 },
  frostLimitF: 32,
  ceiling: [
    { outdoorDbF: 65, capacityBtuh: 40_000 },
    { outdoorDbF: 95, capacityBtuh: 36_000 },
    { outdoorDbF: 115, capacityBtuh: 32_000 },
  ],
  wattsPerBtuhAt82F: 0.07,
  wattsPerBtuhAt95F: 0.085,
  stages: [stageAt(900, 100)],
  settlingMin: 15,
  startTimeConstantS: 60,
  coilHoldsLb: 1.5,
  firstEvaporationLbPerH: 9,
  noCoolingBelowF: 55,
  heatPumpAt17FBtuh: 20_000,
  heatPumpAt47FBtuh: 32_000,
  auxiliaryKw: 10,
};

export const BASE: YearInput = {
  house: HOUSE,
  system: SYSTEM,
  controls: { settings: SETTINGS, coolingSetpointF: 75, heatingSetpointF: 69, dryAbovePct: 55 },
  ventilation: { kind: "continuous", airflowCfm: 60 },
  dehumidifier: null,
  weather: COASTAL,
  humidityLimitPct: 60,
};
