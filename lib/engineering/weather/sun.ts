import { requireRange } from "../units";

const RAD = Math.PI / 180;

export type SunPosition = {
  /** Above the horizon, °, without refraction. */
  readonly elevationDeg: number;
  /** Clockwise from north, °, 0 to 360. */
  readonly azimuthDeg: number;
};

/**
 * Where the sun stands, without refraction.
 *
 * @param input - `daysSinceJ2000` from noon of 1 January 2000 UT, −36,500 to 36,500; `latitudeDeg` −90 to 90, north positive;
 * `longitudeDeg` −180 to 180, east positive.
 * @returns Elevation and azimuth, °.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see Low-precision coordinates of the sun, The Astronomical Almanac, 0.01° between 1950 and 2050 (recalled).
 */
export function sunPosition(input: {
  readonly daysSinceJ2000: number;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}): SunPosition {
  const days = requireRange("daysSinceJ2000", input.daysSinceJ2000, "days", -36_500, 36_500);
  const latitude = requireRange("latitudeDeg", input.latitudeDeg, "°", -90, 90) * RAD;
  const longitudeDeg = requireRange("longitudeDeg", input.longitudeDeg, "°", -180, 180);
  const anomaly = (357.528 + 0.9856003 * days) * RAD;
  const ecliptic =
    (280.46 + 0.9856474 * days + 1.915 * Math.sin(anomaly) + 0.02 * Math.sin(2 * anomaly)) * RAD;
  const obliquity = (23.439 - 4e-7 * days) * RAD;
  const rightAscension = Math.atan2(Math.cos(obliquity) * Math.sin(ecliptic), Math.cos(ecliptic));
  const sinDeclination = Math.sin(obliquity) * Math.sin(ecliptic);
  const cosDeclination = Math.sqrt(1 - sinDeclination * sinDeclination);
  // Greenwich mean sidereal time, in degrees.
  const sidereal = (280.46061837 + 360.98564736629 * days + longitudeDeg) * RAD;
  const hourAngle = sidereal - rightAscension;
  const up = Math.sin(latitude) * sinDeclination + Math.cos(latitude) * cosDeclination * Math.cos(hourAngle);
  const east = -cosDeclination * Math.sin(hourAngle);
  const north =
    Math.cos(latitude) * sinDeclination - Math.sin(latitude) * cosDeclination * Math.cos(hourAngle);
  const azimuth = Math.atan2(east, north) / RAD;
  return {
    elevationDeg: Math.asin(Math.max(-1, Math.min(1, up))) / RAD,
    azimuthDeg: azimuth < 0 ? azimuth + 360 : azimuth,
  };
}
