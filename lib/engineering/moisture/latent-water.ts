import { vapourEnthalpyBtuPerLb } from "../air/vapour-enthalpy";
import { type LbPerH, lbPerH, requireRange } from "../units";

/**
 * Water behind a latent capacity or load.
 *
 * @param latentBtuh - Latent heat flow, Btu/h. ±1,000,000.
 * @param dryBulbF - Dry bulb of the air the water is in, °F. 20 to 130.
 * @returns Water, lb/h: latent over the enthalpy of vapour at that temperature, 1061 + 0.444·t.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see ASHRAE Fundamentals 2017, chapter 1, enthalpy of water vapour in inch-pound units (recalled).
 */
export function waterFromLatent(latentBtuh: number, dryBulbF: number): LbPerH {
  requireRange("latentBtuh", latentBtuh, "Btu/h", -1e6, 1e6);
  requireRange("dryBulbF", dryBulbF, "°F", 20, 130);
  return lbPerH(latentBtuh / vapourEnthalpyBtuPerLb(dryBulbF));
}
