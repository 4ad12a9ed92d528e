import { power } from "../exact-functions";
import { type Cfm, cfm, quantity } from "../units";

const floorArea = quantity("floorAreaFt2", "ft²", 100, 100_000);
const bedroomCount = quantity("bedrooms", "bedrooms", 0, 30);
const leakage = quantity("leakageCfm50", "cfm at 50 Pa", 0, 50_000);
const windShielding = quantity("windShieldingFactor", "ratio", 0.2, 1.5);
const houseHeight = quantity("houseHeightFt", "ft", 6, 60);

/** Height of one storey in the standard's formula, ft. */
const ONE_STOREY_FT = 8.2;

/**
 * Whole-house ventilation need, `0.03·area + 7.5·(bedrooms + 1)`.
 *
 * @param house - `floorAreaFt2` conditioned, 100 to 100,000 ft²; `bedrooms` 0 to 30.
 * @returns Outdoor air, cfm, before any credit for leakage.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see ANSI/ASHRAE Standard 62.2, from the 2013 edition on (published).
 */
export function ventilationNeedCfm(house: { readonly floorAreaFt2: number; readonly bedrooms: number }): Cfm {
  return cfm(0.03 * floorArea(house.floorAreaFt2) + 7.5 * (bedroomCount(house.bedrooms) + 1));
}

/**
 * Average outdoor air a house draws through its leaks over a year, which may be credited, `0.052·wsf·S·Q50`, S = (H/8.2)^0.4.
 *
 * @param house - `leakageCfm50` measured, 0 to 50,000 cfm at 50 Pa; `windShieldingFactor` of the nearest station, 0.2 to
 * 1.5; `houseHeightFt` lowest floor to highest ceiling, 6 to 60 ft.
 * @returns Outdoor air, cfm.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see ANSI/ASHRAE Standard 62.2, infiltration credit (published).
 */
export function infiltrationCreditCfm(house: {
  readonly leakageCfm50: number;
  readonly windShieldingFactor: number;
  readonly houseHeightFt: number;
}): Cfm {
  const stackFactor = power(houseHeight(house.houseHeightFt) / ONE_STOREY_FT, 0.4);
  return cfm(0.052 * windShielding(house.windShieldingFactor) * stackFactor * leakage(house.leakageCfm50));
}
