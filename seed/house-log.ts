import { DateTime } from "luxon";
import { moistAir, standardPressurePsia } from "@/lib/engineering/air";
import type { Weather } from "@/lib/engineering/weather";
import { shown } from "./deviations";

/** An invented house and how it is run. Shares of the interval become seconds in the file. */
export type LoggedHouse = {
  readonly firstDay: string;
  readonly days: number;
  readonly zone: string;
  readonly setpointF: number;
  readonly secondStageStartOffsetF: number;
  readonly firstStageStartOffsetF: number;
  readonly minimumRunMin: number;
  readonly fanBetweenCalls: boolean;
  /** Sensible and, at 75 °F and 50 %, moisture removal of each stage; one stage or two. */
  readonly stages: readonly { readonly sensibleBtuh: number; readonly moistureLbPerH: number }[];
  readonly lossBtuhPerF: number;
  readonly internalBtuh: number;
  readonly solarAreaFt2: number;
  readonly capacitanceBtuPerF: number;
  readonly outdoorAirCfm: number;
  readonly peopleLbPerH: number;
  /** Dry air plus what furnishings exchange like it, lb. */
  readonly moistureStoreLb: number;
};

export const GENERATED_LOG_HEADINGS = [
  "Local time",
  "Indoor temperature F",
  "Indoor RH %",
  "Outdoor temperature F",
  "Outdoor RH %",
  "Cooling setpoint F",
  "Cooling stage 1 seconds",
  "Cooling stage 2 seconds",
  "Fan seconds",
] as const;

const STEP_MIN = 5;
const SEA_LEVEL = standardPressurePsia(30);
/** Air of the coil surface in the moisture balance: about 50 °F saturated. */
const COIL_RATIO = moistAir({
  dryBulbF: 50,
  relativeHumidityPct: 100,
  pressurePsia: SEA_LEVEL,
}).humidityRatio;
const DESIGN_RATIO = moistAir({
  dryBulbF: 75,
  relativeHumidityPct: 50,
  pressurePsia: SEA_LEVEL,
}).humidityRatio;
/** Water a wet coil holds, and how much of it the fan gives back a minute after the compressor stops. Invented. */
const COIL_WATER_LB = 1.6;
const GIVEN_BACK_PER_MIN = 0.06;

/**
 * A generated log, marked as invented in its file name and in the job: one air node for heat and one for moisture, a
 * minute at a time, in a weather year's own hours. No measurement, and no model the product judges by.
 */
export function generatedLog(house: LoggedHouse, weather: Weather): string {
  const lines: string[] = [GENERATED_LOG_HEADINGS.join(",")];
  const start = DateTime.fromISO(house.firstDay, { zone: house.zone });
  let indoorF = house.setpointF + 0.4;
  let ratio: number = DESIGN_RATIO;
  let stage = 0;
  let runMin = 0;
  let coilWaterLb = 0;
  for (let step = 0; step < house.days * 24 * (60 / STEP_MIN); step++) {
    const at = start.plus({ minutes: step * STEP_MIN });
    const outdoor = outdoorAt(weather, at);
    const seconds = { first: 0, second: 0, fan: 0 };
    for (let minute = 0; minute < STEP_MIN; minute++) {
      const above = indoorF - house.setpointF;
      [stage, runMin] = nextStage(house, stage, runMin, above);
      const running = house.stages[Math.min(stage, house.stages.length) - 1];
      const gain =
        house.lossBtuhPerF * (outdoor.dryBulbF - indoorF) +
        house.internalBtuh +
        house.solarAreaFt2 * outdoor.solarBtuhPerFt2;
      indoorF += (gain - (running?.sensibleBtuh ?? 0)) / 60 / house.capacitanceBtuPerF;
      const strength = Math.max(0, (ratio - COIL_RATIO) / (DESIGN_RATIO - COIL_RATIO));
      const condensedLb = ((running?.moistureLbPerH ?? 0) * strength) / 60;
      coilWaterLb = Math.min(COIL_WATER_LB, coilWaterLb + condensedLb);
      const fanAlone = stage === 0 && house.fanBetweenCalls;
      const backLb = fanAlone ? coilWaterLb * GIVEN_BACK_PER_MIN : 0;
      coilWaterLb -= backLb;
      const outdoorLb = 0.075 * house.outdoorAirCfm * (outdoor.humidityRatio - ratio);
      ratio += (house.peopleLbPerH / 60 + outdoorLb + backLb - condensedLb) / house.moistureStoreLb;
      if (stage >= 1) seconds.first += 60;
      if (stage === 2) seconds.second += 60;
      if (stage >= 1 || fanAlone) seconds.fan += 60;
    }
    const indoor = moistAir({ dryBulbF: indoorF, humidityRatio: ratio, pressurePsia: SEA_LEVEL });
    lines.push(
      [
        at.toFormat("yyyy-MM-dd HH:mm"),
        shown(indoorF, 1),
        shown(indoor.relativeHumidityPct, 1),
        shown(outdoor.dryBulbF, 1),
        shown(outdoor.relativeHumidityPct, 1),
        house.setpointF,
        seconds.first,
        seconds.second,
        seconds.fan,
      ].join(","),
    );
  }
  return `${lines.join("\n")}\n`;
}

/** Stage 0, 1 or 2 of the next minute and how long it has run, after the settings the log shows the effect of. */
function nextStage(house: LoggedHouse, stage: number, runMin: number, aboveF: number): [number, number] {
  if (stage === 0) return aboveF >= house.firstStageStartOffsetF ? [1, 1] : [0, 0];
  if (aboveF <= 0 && runMin >= house.minimumRunMin) return [0, 0];
  const isTwoStage = house.stages.length === 2;
  if (isTwoStage && aboveF >= house.secondStageStartOffsetF) return [2, runMin + 1];
  if (stage === 2 && aboveF <= house.firstStageStartOffsetF) return [1, runMin + 1];
  return [stage, runMin + 1];
}

/** The weather year's hours, linear between them. Its clock keeps standard time; the house's does not. */
function outdoorAt(weather: Weather, at: DateTime) {
  const standard = at.toUTC().plus({ hours: weather.place.timeZoneH });
  const hourOfYear = (standard.ordinal - 1) * 24 + standard.hour + standard.minute / 60;
  const hour = Math.floor(hourOfYear);
  const share = hourOfYear - hour;
  // Element i is the end of hour i + 1: the state at hour h of the year stands in element h − 1.
  const between = (values: Float64Array) => {
    const count = weather.hourCount;
    const before = values[(hour - 1 + count) % count] ?? Number.NaN;
    return before + share * ((values[hour % count] ?? Number.NaN) - before);
  };
  return {
    dryBulbF: between(weather.dryBulbF),
    relativeHumidityPct: between(weather.relativeHumidityPct),
    humidityRatio: between(weather.humidityRatio),
    solarBtuhPerFt2: between(weather.globalHorizontalBtuhPerFt2),
  };
}
