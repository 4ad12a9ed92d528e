import { ImpossibleStateError } from "../errors";
import { requireRange } from "../units";
import {
  type Direction,
  irradianceFacing,
  sunDirection,
  surfaceFacing,
  type Weather,
  type WeatherChannel,
  type WeatherPlace,
} from "../weather";
import type { SunAperture } from "./house";

const NEEDED: readonly WeatherChannel[] = [
  "dryBulbF",
  "humidityRatio",
  "pressurePsia",
  "windMph",
  "globalHorizontalBtuhPerFt2",
  "directNormalBtuhPerFt2",
  "diffuseHorizontalBtuhPerFt2",
];
/** 1 January 2001, 0:00 UT, in days from noon of 1 January 2000: a year without 29 February; the sun repeats within 0.3°. */
const YEAR_STARTS = 365.5;
/** Light from lawn and paving (from memory). */
const GROUND_REFLECTANCE = 0.2;

/**
 * Refuses weather with gaps in what the year needs.
 *
 * @param weather - From `parseEpw`; at least 24 hours.
 * @returns Mean pressure, psia, 6 to 17.
 * @throws {@link ImpossibleStateError} naming the channel with gaps; {@link OutOfRangeError} for hours outside −60 to 140 °F.
 * @see Mean of the file's hours (computed).
 */
export function requireWeather(weather: Weather): number {
  requireRange("hourCount", weather.hourCount, "h", 24, 8_784);
  for (const channel of NEEDED) {
    const values = weather[channel];
    for (let hour = 0; hour < weather.hourCount; hour++) {
      if (!Number.isFinite(values[hour])) {
        throw new ImpossibleStateError(
          `The weather has no ${channel} in hour ${hour + 1}; the year needs every hour: choose another file.`,
          [channel],
        );
      }
    }
  }
  let sum = 0;
  for (let hour = 0; hour < weather.hourCount; hour++) {
    sum += weather.pressurePsia[hour] ?? 0;
    requireRange("dryBulbF", weather.dryBulbF[hour] ?? 0, "°F", -60, 140);
    requireRange("humidityRatio", weather.humidityRatio[hour] ?? 0, "lb/lb", 0, 0.05);
    requireRange("windMph", weather.windMph[hour] ?? 0, "mph", 0, 150);
  }
  return requireRange("pressurePsia", sum / weather.hourCount, "psia", 6, 17);
}

/**
 * Heat of the sun through the apertures, hour by hour, with the sun where it stands at the middle of the hour.
 *
 * @param weather - Without gaps.
 * @param apertures - Ranges at {@link SunAperture}.
 * @returns Btu/h, one number an hour.
 * @throws {@link OutOfRangeError} for light or angles outside their ranges.
 * @see `irradianceFacing` (recalled).
 */
export function sunHeatByHour(weather: Weather, apertures: readonly SunAperture[]): Float64Array {
  const heat = new Float64Array(weather.hourCount);
  const surfaces = apertures.map((one) => ({
    ft2: one.areaFt2 * one.transmittance,
    faces: surfaceFacing(one),
  }));
  const suns = sunsOf(weather);
  for (let hour = 0; hour < weather.hourCount; hour++) {
    const light = {
      globalHorizontal: weather.globalHorizontalBtuhPerFt2[hour] ?? 0,
      directNormal: weather.directNormalBtuhPerFt2[hour] ?? 0,
      diffuseHorizontal: weather.diffuseHorizontalBtuhPerFt2[hour] ?? 0,
    };
    if (light.globalHorizontal + light.directNormal + light.diffuseHorizontal === 0) continue;
    const sun = suns[hour];
    if (sun === undefined) continue;
    let sum = 0;
    for (const { ft2, faces } of surfaces) {
      sum += ft2 * irradianceFacing(light, GROUND_REFLECTANCE, faces, sun);
    }
    heat[hour] = sum;
  }
  return heat;
}

/** The sun over a place is the same for every house and every shifted year there; found once. */
const kept = new WeakMap<WeatherPlace, readonly Direction[]>();

function sunsOf({ place, hourCount }: Weather): readonly Direction[] {
  const found = kept.get(place);
  if (found !== undefined && found.length === hourCount) return found;
  const { latitudeDeg, longitudeDeg, timeZoneH } = place;
  const suns = Array.from({ length: hourCount }, (_, hour) =>
    sunDirection({ daysSinceJ2000: YEAR_STARTS + (hour + 0.5 - timeZoneH) / 24, latitudeDeg, longitudeDeg }),
  );
  kept.set(place, suns);
  return suns;
}
