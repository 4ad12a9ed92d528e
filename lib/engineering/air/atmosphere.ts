import { type Psia, psia, quantity, type Ratio, ratio } from "../units";
import { psychrometrics } from "./psychrometrics";

const elevation = quantity("elevationFt", "ft", -2_000, 20_000);

/** Sea-level pressure of the standard atmosphere, psia. */
export const SEA_LEVEL_PRESSURE_PSIA = 14.696;

/**
 * Pressure of the standard atmosphere at an elevation.
 *
 * @param elevationFt - Height above sea level, ft. −2,000 to 20,000.
 * @returns Atmospheric pressure, psia.
 * @throws {@link OutOfRangeError} outside that range.
 * @see ASHRAE Handbook, Fundamentals 2017, ch. 1 eq. 3 (recalled; its table 1 checked in tests).
 */
export function standardPressurePsia(elevationFt: number): Psia {
  return psia(psychrometrics.GetStandardAtmPressure(elevation(elevationFt)));
}

/**
 * Density of the site's air over that of standard air (0.075 lb/ft³) at the same temperature and moisture.
 *
 * @param elevationFt - Height above sea level, ft. −2,000 to 20,000.
 * @returns Ratio, 1 at sea level.
 * @throws {@link OutOfRangeError} outside that range.
 * @see Ideal gas: at one temperature density goes with pressure, so P / 14.696 (physics).
 */
export function densityRatio(elevationFt: number): Ratio {
  return ratio(standardPressurePsia(elevationFt) / SEA_LEVEL_PRESSURE_PSIA);
}
