import { VAPOUR_ENTHALPY_AT_0F, VAPOUR_SPECIFIC_HEAT, vapourEnthalpyBtuPerLb } from "../air/vapour-enthalpy";

/*
 * Saturated moist air for the inner loop of the coil model.
 *
 * psychrolib's saturation pressure costs an `exp` and a `log` a call; the year simulation asks for it several
 * times a minute. These polynomials were fitted (relative least squares at 400 Chebyshev nodes) to the very
 * equations it uses: ASHRAE Handbook, Fundamentals 2017, ch. 1 eq. 5 (ice) and eq. 6 (liquid).
 * Tolerance against psychrolib, checked in tests: 5e-7 relative in pressure, 2e-5 Btu/lb in enthalpy.
 *
 * Nothing here checks its input: callers stay inside the range of the fit.
 */

/** Lowest temperature of the fit, °F. */
export const COLDEST_SATURATION_F = -10;
/** Highest temperature of the fit, °F. */
export const WARMEST_SATURATION_F = 140;
/** Where the ice equation hands over to the liquid one, °F. */
const TRIPLE_POINT_F = 32.018;
/** Molar mass of water over that of dry air, ASHRAE 2017 ch. 1 eq. 20. */
export const MASS_RATIO = 0.621945;
/** Specific heat of dry air, Btu/(lb·°F), ASHRAE 2017 ch. 1 eq. 30. */
const DRY_AIR_HEAT = 0.24;

// The sums are written as a tree (Estrin) instead of nested (Horner): the processor then works on the terms side by side,
// which halves the time of the whole coil model.

/**
 * Saturation pressure, psia, at °F. Liquid above 32.018 °F, ice below.
 *
 * @param tempF - °F, −10 to 140.
 * @returns psia.
 * @see Within 5e-7 of ASHRAE Handbook, Fundamentals 2017, ch. 1 eq. 5 and 6 (computed: fitted at the head of this file).
 */
export function fastSaturationPressurePsia(tempF: number): number {
  if (tempF > TRIPLE_POINT_F) {
    const x = (tempF - 86) / 54;
    const x2 = x * x;
    const x4 = x2 * x2;
    return (
      0.6158343514 +
      1.060559034 * x +
      (0.793952288 + 0.3313173256 * x) * x2 +
      (0.08065500268 + 0.01019658593 * x + (1.853986178e-4 - 9.913165036e-5 * x) * x2) * x4 -
      4.328687827e-6 * x4 * x4
    );
  }
  const x = (tempF - 11) / 21;
  const x2 = x * x;
  return (
    0.03248026735 +
    0.0340744057 * x +
    (0.01634365165 + 0.004711826321 * x) * x2 +
    (9.009910524e-4 + 1.189147447e-4 * x + 1.018257975e-5 * x2) * x2 * x2
  );
}

/**
 * Derivative of {@link fastSaturationPressurePsia}, psia per °F. Serves Newton's method only.
 *
 * @param tempF - °F, −10 to 140.
 * @returns psia per °F.
 * @see Derivative of the polynomials above (computed).
 */
export function saturationPressureSlope(tempF: number): number {
  if (tempF > TRIPLE_POINT_F) {
    const x = (tempF - 86) / 54;
    const x2 = x * x;
    const x4 = x2 * x2;
    const perX =
      1.060559034 +
      2 * 0.793952288 * x +
      (3 * 0.3313173256 + 4 * 0.08065500268 * x) * x2 +
      (5 * 0.01019658593 + 6 * 1.853986178e-4 * x + (7 * -9.913165036e-5 + 8 * -4.328687827e-6 * x) * x2) *
        x4;
    return perX / 54;
  }
  const x = (tempF - 11) / 21;
  const x2 = x * x;
  const perX =
    0.0340744057 +
    2 * 0.01634365165 * x +
    (3 * 0.004711826321 + 4 * 9.009910524e-4 * x) * x2 +
    (5 * 1.189147447e-4 + 6 * 1.018257975e-5 * x) * x2 * x2;
  return perX / 21;
}

/**
 * Humidity ratio of saturated air, lb/lb.
 *
 * @param tempF - °F, −10 to 140.
 * @param pressurePsia - Atmospheric pressure, psia, 6 to 17.
 * @returns lb/lb.
 * @see ASHRAE Handbook, Fundamentals 2017, ch. 1 eq. 23 (recalled).
 */
export function fastSaturationHumidityRatio(tempF: number, pressurePsia: number): number {
  const vapourPsia = fastSaturationPressurePsia(tempF);
  return (MASS_RATIO * vapourPsia) / (pressurePsia - vapourPsia);
}

/**
 * Derivative of {@link fastSaturationHumidityRatio}, lb/lb per °F.
 *
 * @param tempF - °F, −10 to 140.
 * @param pressurePsia - Atmospheric pressure, psia, 6 to 17.
 * @returns lb/lb per °F.
 * @see Derivative of the equation above (computed).
 */
export function saturationHumidityRatioSlope(tempF: number, pressurePsia: number): number {
  const dryPsia = pressurePsia - fastSaturationPressurePsia(tempF);
  return (MASS_RATIO * pressurePsia * saturationPressureSlope(tempF)) / (dryPsia * dryPsia);
}

/**
 * Enthalpy of moist air, Btu per lb of dry air; ASHRAE 2017 ch. 1 eq. 30.
 *
 * @param tempF - °F, −10 to 140.
 * @param humidityRatio - lb/lb, 0 to saturation.
 * @returns Btu per lb of dry air.
 * @see ASHRAE Handbook, Fundamentals 2017, ch. 1 eq. 30 (recalled).
 */
export function moistEnthalpy(tempF: number, humidityRatio: number): number {
  return DRY_AIR_HEAT * tempF + humidityRatio * vapourEnthalpyBtuPerLb(tempF);
}

/**
 * Heat to warm moist air by 1 °F at constant humidity ratio, Btu per lb of dry air and °F; the derivative of {@link
 * moistEnthalpy}.
 *
 * @param humidityRatio - lb/lb, 0 to 1.
 * @returns Btu/(lb·°F).
 * @see Derivative of eq. 30 (computed).
 */
export function moistHeatCapacity(humidityRatio: number): number {
  return DRY_AIR_HEAT + VAPOUR_SPECIFIC_HEAT * humidityRatio;
}

/**
 * Dry bulb of moist air from its enthalpy, °F; the inverse of {@link moistEnthalpy} in closed form.
 *
 * @param enthalpyBtuPerLb - Btu per lb of dry air, of air at −10 to 140 °F.
 * @param humidityRatio - lb/lb, 0 to 1.
 * @returns °F.
 * @see Inverse of eq. 30 (computed).
 */
export function dryBulbAt(enthalpyBtuPerLb: number, humidityRatio: number): number {
  return (enthalpyBtuPerLb - VAPOUR_ENTHALPY_AT_0F * humidityRatio) / moistHeatCapacity(humidityRatio);
}

/**
 * Enthalpy of saturated air, Btu/lb.
 *
 * @param tempF - °F, −10 to 140.
 * @param pressurePsia - Atmospheric pressure, psia, 6 to 17.
 * @returns Btu per lb of dry air.
 * @see ASHRAE Handbook, Fundamentals 2017, ch. 1 eq. 30 (recalled).
 */
export function fastSaturationEnthalpy(tempF: number, pressurePsia: number): number {
  return moistEnthalpy(tempF, fastSaturationHumidityRatio(tempF, pressurePsia));
}

/**
 * Derivative of {@link fastSaturationEnthalpy}, Btu/lb per °F.
 *
 * @param tempF - °F, −10 to 140.
 * @param pressurePsia - Atmospheric pressure, psia, 6 to 17.
 * @returns Btu/lb per °F.
 * @see Derivative of the equation above (computed).
 */
export function saturationEnthalpySlope(tempF: number, pressurePsia: number): number {
  return (
    moistHeatCapacity(fastSaturationHumidityRatio(tempF, pressurePsia)) +
    vapourEnthalpyBtuPerLb(tempF) * saturationHumidityRatioSlope(tempF, pressurePsia)
  );
}
