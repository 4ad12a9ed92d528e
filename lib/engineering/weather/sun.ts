import { atan2, cos, sin } from "../exact-functions";
import { requireRange } from "../units";

const RAD = Math.PI / 180;

export type SunPosition = {
  /** Above the horizon, °, without refraction. */
  readonly elevationDeg: number;
  /** Clockwise from north, °, 0 to 360. */
  readonly azimuthDeg: number;
};

/** Where a sun of length 1 stands, or where a surface looks: up, east and north. */
export type Direction = { readonly up: number; readonly east: number; readonly north: number };

type SunAt = {
  readonly daysSinceJ2000: number;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
};

/**
 * The direction of the sun, without refraction.
 *
 * @param input - As {@link sunPosition}.
 * @returns Parts of a vector of length 1.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see Low-precision coordinates of the sun, The Astronomical Almanac, 0.01° between 1950 and 2050 (recalled).
 */
export function sunDirection(input: SunAt): Direction {
  const days = requireRange("daysSinceJ2000", input.daysSinceJ2000, "days", -36_500, 36_500);
  const latitude = requireRange("latitudeDeg", input.latitudeDeg, "°", -90, 90) * RAD;
  const longitudeDeg = requireRange("longitudeDeg", input.longitudeDeg, "°", -180, 180);
  const anomaly = (357.528 + 0.9856003 * days) * RAD;
  const sinAnomaly = sin(anomaly);
  // sin 2a = 2 sin a cos a
  const ecliptic =
    (280.46 + 0.9856474 * days + 1.915 * sinAnomaly + 0.02 * 2 * sinAnomaly * cos(anomaly)) * RAD;
  const obliquity = (23.439 - 4e-7 * days) * RAD;
  // The sun among the stars, as a vector: towards the equinox, a quarter turn east of it, and the pole.
  const toEquinox = cos(ecliptic);
  const toEast = cos(obliquity) * sin(ecliptic);
  const toPole = sin(obliquity) * sin(ecliptic);
  // Greenwich mean sidereal time turned to the place's meridian, in degrees; whole turns are taken off, or digits are lost.
  const sidereal = ((280.46061837 + 360.98564736629 * days + longitudeDeg) % 360) * RAD;
  const cosSidereal = cos(sidereal);
  const sinSidereal = sin(sidereal);
  // cos δ · cos and sin of the hour angle
  const toMeridian = cosSidereal * toEquinox + sinSidereal * toEast;
  const west = sinSidereal * toEquinox - cosSidereal * toEast;
  const sinLatitude = sin(latitude);
  const cosLatitude = cos(latitude);
  return {
    up: sinLatitude * toPole + cosLatitude * toMeridian,
    east: -west,
    north: cosLatitude * toPole - sinLatitude * toMeridian,
  };
}

/**
 * Where the sun stands, without refraction.
 *
 * @param input - `daysSinceJ2000` from noon of 1 January 2000 UT, −36,500 to 36,500; `latitudeDeg` −90 to 90, north positive;
 * `longitudeDeg` −180 to 180, east positive.
 * @returns Elevation and azimuth, °.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see Low-precision coordinates of the sun, The Astronomical Almanac, 0.01° between 1950 and 2050 (recalled).
 */
export function sunPosition(input: SunAt): SunPosition {
  const { up, east, north } = sunDirection(input);
  const azimuth = atan2(east, north) / RAD;
  return {
    elevationDeg: atan2(up, Math.sqrt(east * east + north * north)) / RAD,
    azimuthDeg: azimuth < 0 ? azimuth + 360 : azimuth,
  };
}
