// By their files: the phone has no use for the reader of weather files.
import { exp } from "../exact-functions";
import { sunDirection } from "../weather/sun";
import { irradianceFacing, surfaceFacing } from "../weather/tilted-irradiance";

/** Clear sky of 21 July: apparent sun beyond the air, its extinction and the sky's share (ASHRAE clear-sky model, recalled). */
const APPARENT_SUN = 344;
const EXTINCTION = 0.207;
const SKY_SHARE = 0.136;
const GROUND_REFLECTANCE = 0.2;
/** 21 July 2001, 0:00 UT, in days from noon of 1 January 2000. */
const DAY_BEGINS = 566.5;
/** Between the Gulf and the Lakes; from 25 to 45° north the four walls' peak moves by a few per cent. */
const LATITUDE_DEG = 35;
const WALLS_DEG = [0, 90, 180, 270];

let kept: readonly number[] | null = null;

/**
 * Light of a clear July day on a house with a quarter of its glass on each side, by solar hour.
 *
 * @returns 24 numbers, Btu/h on each ft² of glass, mean of the four walls, at the middle of each hour.
 * @throws {@link OutOfRangeError} never, as every input is a constant.
 * @see ASHRAE clear-sky model, coefficients of 21 July (recalled); `irradianceFacing` (recalled).
 */
export function clearDayLight(): readonly number[] {
  kept ??= Array.from({ length: 24 }, (_, hour) => lightAt(hour + 0.5));
  return kept;
}

function lightAt(solarHour: number): number {
  const sun = sunDirection({
    daysSinceJ2000: DAY_BEGINS + solarHour / 24,
    latitudeDeg: LATITUDE_DEG,
    longitudeDeg: 0,
  });
  const height = sun.up;
  if (height <= 0) return 0;
  const directNormal = APPARENT_SUN * exp(-EXTINCTION / height);
  const diffuseHorizontal = SKY_SHARE * directNormal;
  const globalHorizontal = diffuseHorizontal + directNormal * height;
  const light = { directNormal, diffuseHorizontal, globalHorizontal };
  const walls = WALLS_DEG.map((azimuthDeg) =>
    irradianceFacing(light, GROUND_REFLECTANCE, surfaceFacing({ tiltDeg: 90, azimuthDeg }), sun),
  );
  return walls.reduce((sum, one) => sum + one, 0) / walls.length;
}
