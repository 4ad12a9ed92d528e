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
const MASS_RATIO = 0.621945;

/** Saturation pressure, psia, at °F. Liquid above 32.018 °F, ice below. */
export function fastSaturationPressurePsia(tempF: number): number {
  if (tempF > TRIPLE_POINT_F) {
    const x = (tempF - 86) / 54;
    let sum = -4.328687827e-6;
    sum = sum * x - 9.913165036e-5;
    sum = sum * x + 1.853986178e-4;
    sum = sum * x + 0.01019658593;
    sum = sum * x + 0.08065500268;
    sum = sum * x + 0.3313173256;
    sum = sum * x + 0.793952288;
    sum = sum * x + 1.060559034;
    return sum * x + 0.6158343514;
  }
  const x = (tempF - 11) / 21;
  let sum = 1.018257975e-5;
  sum = sum * x + 1.189147447e-4;
  sum = sum * x + 9.009910524e-4;
  sum = sum * x + 0.004711826321;
  sum = sum * x + 0.01634365165;
  sum = sum * x + 0.0340744057;
  return sum * x + 0.03248026735;
}

/** Derivative of {@link fastSaturationPressurePsia}, psia per °F. Serves Newton's method only. */
function saturationPressureSlope(tempF: number): number {
  if (tempF > TRIPLE_POINT_F) {
    const x = (tempF - 86) / 54;
    let sum = 8 * -4.328687827e-6;
    sum = sum * x - 7 * 9.913165036e-5;
    sum = sum * x + 6 * 1.853986178e-4;
    sum = sum * x + 5 * 0.01019658593;
    sum = sum * x + 4 * 0.08065500268;
    sum = sum * x + 3 * 0.3313173256;
    sum = sum * x + 2 * 0.793952288;
    return (sum * x + 1.060559034) / 54;
  }
  const x = (tempF - 11) / 21;
  let sum = 6 * 1.018257975e-5;
  sum = sum * x + 5 * 1.189147447e-4;
  sum = sum * x + 4 * 9.009910524e-4;
  sum = sum * x + 3 * 0.004711826321;
  sum = sum * x + 2 * 0.01634365165;
  return (sum * x + 0.0340744057) / 21;
}

/** Humidity ratio of saturated air, lb/lb. */
export function fastSaturationHumidityRatio(tempF: number, pressurePsia: number): number {
  const vapourPsia = fastSaturationPressurePsia(tempF);
  return (MASS_RATIO * vapourPsia) / (pressurePsia - vapourPsia);
}

/** Derivative of {@link fastSaturationHumidityRatio}, lb/lb per °F. */
export function saturationHumidityRatioSlope(tempF: number, pressurePsia: number): number {
  const dryPsia = pressurePsia - fastSaturationPressurePsia(tempF);
  return (MASS_RATIO * pressurePsia * saturationPressureSlope(tempF)) / (dryPsia * dryPsia);
}

/** Enthalpy of moist air, Btu per lb of dry air; ASHRAE 2017 ch. 1 eq. 30. */
export function moistEnthalpy(tempF: number, humidityRatio: number): number {
  return 0.24 * tempF + humidityRatio * (1061 + 0.444 * tempF);
}

/** Enthalpy of saturated air, Btu/lb. */
export function fastSaturationEnthalpy(tempF: number, pressurePsia: number): number {
  return moistEnthalpy(tempF, fastSaturationHumidityRatio(tempF, pressurePsia));
}

/** Derivative of {@link fastSaturationEnthalpy}, Btu/lb per °F. */
export function saturationEnthalpySlope(tempF: number, pressurePsia: number): number {
  return (
    0.24 +
    0.444 * fastSaturationHumidityRatio(tempF, pressurePsia) +
    (1061 + 0.444 * tempF) * saturationHumidityRatioSlope(tempF, pressurePsia)
  );
}
