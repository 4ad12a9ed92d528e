/** Enthalpy of water vapour at 0 °F over liquid at 32 °F, Btu/lb. */
export const VAPOUR_ENTHALPY_AT_0F = 1061;
/** Specific heat of water vapour, Btu/(lb·°F). */
export const VAPOUR_SPECIFIC_HEAT = 0.444;

/**
 * Enthalpy of the water vapour in air: what a pound of water carries as latent heat at the air's dry bulb. Unchecked and without
 * allocation, because the coil model asks for it in its inner loop; callers stay inside the range.
 *
 * @param dryBulbF - Dry bulb of the air, °F, −148 to 392.
 * @returns Btu per lb of water.
 * @see ASHRAE Fundamentals 2017, chapter 1, equation 30: h = 0.240 t + W (1061 + 0.444 t) (recalled).
 */
export function vapourEnthalpyBtuPerLb(dryBulbF: number): number {
  return VAPOUR_ENTHALPY_AT_0F + VAPOUR_SPECIFIC_HEAT * dryBulbF;
}
