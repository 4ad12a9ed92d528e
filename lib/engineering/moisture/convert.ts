import { requireRange } from "../units";

/*
 * Volumes of water are at 60 °F, where a US gallon weighs 8.337 lb: 231 in³ of water at 62.367 lb/ft³ (computed:
 * 231 / 1728 · 62.367). Dehumidifiers are rated in pints, eight to the gallon.
 */

/** Weight of a US gallon of water, lb. */
export const LB_PER_GALLON = 8.337;
/** Weight of a US pint of water, lb. */
export const LB_PER_PINT = LB_PER_GALLON / 8;
const HOURS_PER_DAY = 24;

const flow = (name: string, value: number): number => requireRange(name, value, "", -1e6, 1e6);

/**
 * Gallons of water an hour.
 *
 * @param lbPerH - Water, lb/h. ±1,000,000.
 * @returns gal/h.
 * @throws {@link OutOfRangeError} outside that range.
 * @see Definition of the gallon, density of water (computed).
 */
export function gallonsPerHour(lbPerH: number): number {
  return flow("moisture lb/h", lbPerH) / LB_PER_GALLON;
}

/**
 * Pints of water a day, the unit of dehumidifier ratings.
 *
 * @param lbPerH - Water, lb/h. ±1,000,000.
 * @returns pint/day.
 * @throws {@link OutOfRangeError} outside that range.
 * @see Eight pints a gallon (computed).
 */
export function pintsPerDay(lbPerH: number): number {
  return (flow("moisture lb/h", lbPerH) / LB_PER_PINT) * HOURS_PER_DAY;
}

/**
 * Water from a dehumidifier rating.
 *
 * @param pints - pint/day. ±1,000,000.
 * @returns lb/h.
 * @throws {@link OutOfRangeError} outside that range.
 * @see Eight pints a gallon (computed).
 */
export function lbPerHFromPintsPerDay(pints: number): number {
  return (flow("pints per day", pints) * LB_PER_PINT) / HOURS_PER_DAY;
}

/**
 * Water from gallons an hour.
 *
 * @param gallons - gal/h. ±1,000,000.
 * @returns lb/h.
 * @throws {@link OutOfRangeError} outside that range.
 * @see Definition of the gallon (computed).
 */
export function lbPerHFromGallonsPerHour(gallons: number): number {
  return flow("gallons per hour", gallons) * LB_PER_GALLON;
}
