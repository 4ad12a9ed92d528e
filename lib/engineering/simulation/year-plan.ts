import { moistAir } from "../air";
import type { ControlSettings } from "../controls";
import { COIL, coilNumbers } from "../equipment/coil-numbers";
import { solveWetBulb } from "../equipment/coil-surface";
import { fastSaturationHumidityRatio } from "../equipment/saturation";
import { LB_PER_PINT } from "../moisture";
import { requireRange } from "../units";
import type { Weather } from "../weather";
import {
  type HouseModel,
  leakageSquares,
  requireHouse,
  requireVentilation,
  type VentilationModel,
} from "./house";
import { ceilingByHour, type StagePlan, stagePlans } from "./stage-plan";
import { type DehumidifierModel, requireSystem, type SystemModel, type YearControls } from "./system";
import { requireWeather, sunHeatByHour } from "./weather-drive";

/** Everything a year needs. */
export type YearInput = {
  readonly house: HouseModel;
  readonly system: SystemModel;
  readonly controls: YearControls;
  readonly ventilation: VentilationModel;
  readonly dehumidifier: DehumidifierModel | null;
  readonly weather: Weather;
  /** Above this the house counts as wet, 30 to 90 %. */
  readonly humidityLimitPct: number;
  /** 1 for the usual minute; more to see that the step does not matter. 1, 2 or 4. */
  readonly stepsPerMinute?: 1 | 2 | 4;
  /** Whole hours, 168 at most, of which every step is kept for a picture. */
  readonly trace?: { readonly firstHour: number; readonly hours: number };
};

/** The checked input as the loop reads it. */
export type YearPlan = {
  readonly hours: number;
  readonly stepsPerHour: number;
  readonly pressurePsia: number;
  readonly outdoorF: Float64Array;
  readonly outdoorRatio: Float64Array;
  readonly windMph: Float64Array;
  readonly sunBtuh: Float64Array;
  readonly ceilingBtuh: Float64Array;
  /** 1 where the ventilation's clock lets it run. */
  readonly ventilationHour: Float64Array;
  readonly ventilationCfm: number;
  /** Ventilation pauses above this outdoor humidity ratio. */
  readonly pauseAboveRatio: number;
  readonly gainsBtuh: Float64Array;
  readonly moistureLbPerH: Float64Array;
  readonly airLb: number;
  readonly bufferLb: number;
  readonly bufferLbPerH: number;
  readonly stackCfm2PerF: number;
  readonly windCfm2PerMph2: number;
  readonly stages: readonly StagePlan[];
  readonly settings: ControlSettings;
  readonly house: HouseModel;
  readonly system: SystemModel;
  readonly controls: YearControls;
  readonly dehumidifier: DehumidifierModel | null;
  /** Dehumidifier's lb/h for each lb/lb of the room. */
  readonly dehumidifierLbPerHPerRatio: number;
  /** Depression of the evaporation's reference air, 80 °F and 67 °F wet bulb, as saturation minus humidity ratio. */
  readonly referenceDeficit: number;
  readonly humidityLimitPct: number;
};

/**
 * Checks a year's input and flattens it for the loop.
 *
 * @param input - Ranges at its fields.
 * @returns The plan.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} naming the field.
 * @see The equations of the parts it prepares (computed).
 */
export function yearPlan(input: YearInput): YearPlan {
  const { house, system, controls, ventilation, dehumidifier, weather } = input;
  requireHouse(house);
  requireVentilation(ventilation);
  requireSystem(system, controls, dehumidifier);
  const pressurePsia = requireWeather(weather);
  const humidityLimitPct = requireRange("humidityLimitPct", input.humidityLimitPct, "%", 30, 90);
  const room = moistAir({ dryBulbF: controls.coolingSetpointF, relativeHumidityPct: 50, pressurePsia });
  const hours = weather.hourCount;
  const airLb = house.volumeFt3 / room.specificVolumeFt3PerLb;
  const bufferLb = airLb * (house.moistureCapacitanceMultiple - 1);
  const hourOfDay = (hour: number) => hour % 24;
  const timed = ventilation.kind === "timed" ? ventilation : null;
  const openAt = (hour: number): boolean =>
    timed === null ||
    (timed.fromHour <= timed.toHour
      ? hour >= timed.fromHour && hour < timed.toHour
      : hour >= timed.fromHour || hour < timed.toHour);
  const rated =
    dehumidifier === null
      ? null
      : moistAir({
          dryBulbF: dehumidifier.ratedDbF,
          relativeHumidityPct: dehumidifier.ratedRhPct,
          pressurePsia,
        });
  return {
    hours,
    stepsPerHour: 60 * (input.stepsPerMinute ?? 1),
    pressurePsia,
    outdoorF: weather.dryBulbF,
    outdoorRatio: weather.humidityRatio,
    windMph: weather.windMph,
    sunBtuh: sunHeatByHour(weather, house.apertures),
    ceilingBtuh: ceilingByHour(system, weather),
    ventilationHour: Float64Array.from({ length: 24 }, (_, hour) => (openAt(hourOfDay(hour)) ? 1 : 0)),
    ventilationCfm: ventilation.kind === "none" ? 0 : ventilation.airflowCfm,
    pauseAboveRatio:
      ventilation.kind === "on need"
        ? fastSaturationHumidityRatio(ventilation.pauseAboveDewPointF, pressurePsia)
        : 1,
    gainsBtuh: Float64Array.from(house.gainsBtuhByHour),
    moistureLbPerH: Float64Array.from(house.moistureLbPerHByHour),
    airLb,
    // With air alone the buffer is an inert pound that nothing reaches.
    bufferLb: Math.max(bufferLb, 1),
    bufferLbPerH: bufferLb / house.moistureExchangeH,
    ...leakageSquares(house),
    stages: stagePlans(system, room),
    settings: controls.settings,
    house,
    system,
    controls,
    dehumidifier,
    dehumidifierLbPerHPerRatio:
      dehumidifier === null || rated === null
        ? 0
        : (dehumidifier.ratedPintsPerDay * LB_PER_PINT) / 24 / rated.humidityRatio,
    referenceDeficit: referenceDeficit(pressurePsia),
    humidityLimitPct,
  };
}

/** Found as the loop finds it, so that the rate at 80 °F and 67 °F wet bulb is the rated one. */
function referenceDeficit(pressurePsia: number): number {
  const { humidityRatio } = moistAir({ dryBulbF: 80, wetBulbF: 67, pressurePsia });
  const air = coilNumbers(pressurePsia);
  air[COIL.enteringDbF] = 80;
  air[COIL.enteringHumidityRatio] = humidityRatio;
  air[COIL.solvedF] = 67;
  solveWetBulb(air);
  return fastSaturationHumidityRatio(air[COIL.solvedF] ?? Number.NaN, pressurePsia) - humidityRatio;
}
