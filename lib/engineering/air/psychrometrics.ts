import psychrolib from "psychrolib";
import { power } from "../exact-functions";
import { dewPointOfPressureF, saturationPressurePsia } from "./saturation-pressure";

// The library is one shared object with a unit system inside it. This is the only file that imports it,
// so the system is chosen once and cannot change under anyone's feet.
psychrolib.SetUnitSystem(psychrolib.IP);

/** Sea level of the standard atmosphere, psia, and its fall with height in ft (ASHRAE 2017 ch. 1 eq. 3, recalled). */
const SEA_LEVEL_PSIA = 14.696;
const FALL_PER_FT = 6.8754e-6;
const EXPONENT = 5.2559;

/**
 * Equations of ASHRAE Handbook, Fundamentals 2017, chapter 1, in inch-pound units: the library's algebra, on saturation and atmosphere that
 * give the same bytes on every engine. What it derives from saturation (the wet bulb's humidity ratio) calls these.
 */
export const psychrometrics: typeof psychrolib = Object.assign(
  Object.create(psychrolib) as typeof psychrolib,
  {
    GetSatVapPres: saturationPressurePsia,
    GetTDewPointFromVapPres: (dryBulbF: number, vapourPsia: number) =>
      dewPointOfPressureF(vapourPsia, dryBulbF),
    GetStandardAtmPressure: (elevationFt: number) =>
      SEA_LEVEL_PSIA * power(1 - FALL_PER_FT * elevationFt, EXPONENT),
  },
);

/** Below this the library silently puts 1e-7 in place of the humidity ratio, so this code refuses it first. */
export const LEAST_HUMIDITY_RATIO = 1e-7;

/** Grains in a pound, by definition. */
export const GRAINS_PER_POUND = 7_000;
