import { moistAir, waterSaturationPressurePsia } from "../air";
import { MASS_RATIO } from "../equipment/saturation";
import { requireRange } from "../units";
import type { Weather } from "../weather";

/** How far one year may stand off the typical one. */
export type WeatherShift = { readonly dryBulbByF: number; readonly dewPointByF: number };

/**
 * The same year, warmer or cooler, wetter or drier throughout: another year than the typical one. Sun, wind and pressure stay.
 *
 * @param weather - From `parseEpw`, without gaps in dry bulb, humidity ratio and pressure.
 * @param shift - Each −10 to 10 °F. A dew point never passes the dry bulb: then the air is saturated.
 * @returns The shifted year; the same object when nothing shifts.
 * @throws {@link OutOfRangeError} outside that range.
 * @see Humidity ratio of the shifted dew point, ASHRAE Fundamentals 2017 ch. 1 eq. 20 (recalled); that a year differs so evenly: an assumption.
 */
export function shiftWeather(weather: Weather, shift: WeatherShift): Weather {
  const warmer = requireRange("dryBulbByF", shift.dryBulbByF, "Δ°F", -10, 10);
  const wetter = requireRange("dewPointByF", shift.dewPointByF, "Δ°F", -10, 10);
  if (warmer === 0 && wetter === 0) return weather;
  const dryBulbF = weather.dryBulbF.map((value) => value + warmer);
  const dewPointF = weather.dewPointF.map((value, hour) =>
    Math.min((Number.isNaN(value) ? dewPointOf(weather, hour) : value) + wetter, dryBulbF[hour] ?? value),
  );
  const vapourPsia = dewPointF.map((value) => waterSaturationPressurePsia(value));
  return {
    ...weather,
    dryBulbF,
    dewPointF,
    humidityRatio: vapourPsia.map(
      (psia, hour) => (MASS_RATIO * psia) / ((weather.pressurePsia[hour] ?? Number.NaN) - psia),
    ),
    relativeHumidityPct: vapourPsia.map(
      (psia, hour) => (100 * psia) / waterSaturationPressurePsia(dryBulbF[hour] ?? Number.NaN),
    ),
  };
}

function dewPointOf(weather: Weather, hour: number): number {
  return moistAir({
    dryBulbF: weather.dryBulbF[hour] ?? Number.NaN,
    pressurePsia: weather.pressurePsia[hour] ?? Number.NaN,
    humidityRatio: weather.humidityRatio[hour] ?? Number.NaN,
  }).dewPointF;
}
