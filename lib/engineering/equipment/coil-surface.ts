import { vapourEnthalpyBtuPerLb } from "../air/vapour-enthalpy";
import { NotConvergedError } from "../errors";
import type { CoilConstants } from "./coil-numbers";
import {
  dryBulbAt,
  fastSaturationHumidityRatio,
  fastSaturationPressurePsia,
  MASS_RATIO,
  moistEnthalpy,
  moistHeatCapacity,
  saturationPressureSlope,
} from "./saturation";

/*
 * The coil's surface in plain numbers, for `coil-core`: which temperature goes with which capacity. Nothing is checked here.
 */

/** Newton's error is about 0.01 of the step's square here: after a step this small it is below 1e-9 °F. */
const LAST_STEP_F = 1e-4;
const MAX_STEPS = 40;

/**
 * Enthalpy of the air at the surface: saturated, or dry with the entering water where the surface is above the dew point.
 *
 * @param adpF - °F, −10 to 140.
 * @param enteringHumidityRatio - lb/lb, 0 to saturation at the entering dry bulb.
 * @param pressurePsia - Atmospheric pressure, psia, 6 to 17.
 * @returns Btu per lb of dry air.
 * @see A surface above the dew point only cools (physics).
 */
export function surfaceEnthalpy(adpF: number, enteringHumidityRatio: number, pressurePsia: number): number {
  const saturated = fastSaturationHumidityRatio(adpF, pressurePsia);
  return moistEnthalpy(adpF, Math.min(saturated, enteringHumidityRatio));
}

/**
 * ADP at which held temperature + approach(capacity) closes on itself: dry in closed form, wet from saturation.
 *
 * @param enteringDbF - °F, 40…120.
 * @param enteringHumidityRatio - lb/lb, 0 to saturation at the entering dry bulb.
 * @param enteringEnthalpy - Btu/lb, of that air: 9 to 150.
 * @param contactLbPerH - Dry air that touches the surface, lb/h, more than 0.
 * @param leastF - Surface temperature at no capacity, °F, 20…110.
 * @param startF - Where the solution starts, °F, frost limit to entering dry bulb: 20…120.
 * @returns Apparatus dew point, °F.
 * @throws {@link NotConvergedError} when the steps run out.
 * @see Balance of the coil with a linear approach (physics).
 */
export function heldAdpF(
  coil: CoilConstants,
  enteringDbF: number,
  enteringHumidityRatio: number,
  enteringEnthalpy: number,
  contactLbPerH: number,
  leastF: number,
  startF: number,
): number {
  if (leastF >= enteringDbF) return enteringDbF;
  const gain = coil.approachSlopeFPerBtuh * contactLbPerH;
  const dryGain = gain * moistHeatCapacity(enteringHumidityRatio);
  const dryF = (leastF + dryGain * enteringDbF) / (1 + dryGain);
  if (fastSaturationHumidityRatio(dryF, coil.pressurePsia) >= enteringHumidityRatio) return dryF;
  if (gain === 0) return leastF;
  return solveSaturated(1, gain, leastF + gain * enteringEnthalpy, coil.pressurePsia, startF, enteringDbF);
}

/**
 * Temperature of a surface whose air has this enthalpy: dry in closed form, wet from saturation.
 *
 * @param enthalpy - Btu per lb of dry air, of air at −10 to 140 °F.
 * @param enteringHumidityRatio - lb/lb, 0 to saturation at the entering dry bulb.
 * @param pressurePsia - Atmospheric pressure, psia, 6 to 17.
 * @param startF - Where the solution starts, °F, −10 to 140.
 * @param highestF - Entering dry bulb, °F, 40…120.
 * @returns °F.
 * @throws {@link NotConvergedError} when the steps run out.
 * @see Enthalpy of moist air, ASHRAE 2017 ch. 1 eq. 30 (recalled).
 */
export function surfaceTemperatureF(
  enthalpy: number,
  enteringHumidityRatio: number,
  pressurePsia: number,
  startF: number,
  highestF: number,
): number {
  const dryF = dryBulbAt(enthalpy, enteringHumidityRatio);
  // The polynomial is only asked inside its range: a "dry" surface far below any dew point is wet for sure.
  if (dryF > 0 && fastSaturationHumidityRatio(dryF, pressurePsia) >= enteringHumidityRatio) return dryF;
  return solveSaturated(0, 1, enthalpy, pressurePsia, startF, highestF);
}

/**
 * The temperature t at which `temperatureWeight · t + enthalpyWeight · h_sat(t) = target`.
 *
 * No closed form. The left side is convex and rising, so Newton's method descends onto the root without turning from any
 * start to its right, and from a start to its left it is on the right after one step.
 *
 * @param temperatureWeight - 0 or 1, no unit.
 * @param enthalpyWeight - °F·lb/Btu, more than 0.
 * @param target - Right side, in the unit of the left; it must lie on the curve from −10 to 140 °F.
 * @param pressurePsia - Atmospheric pressure, psia, 6 to 17.
 * @param startF - Where the solution starts, °F, −10 to 140.
 * @param highestF - Highest answer, °F, 40…120.
 * @returns °F.
 * @throws {@link NotConvergedError} when the steps run out.
 * @see Newton's method on a convex function (computed).
 */
export function solveSaturated(
  temperatureWeight: number,
  enthalpyWeight: number,
  target: number,
  pressurePsia: number,
  startF: number,
  highestF: number,
): number {
  let tempF = startF;
  for (let step = 0; step < MAX_STEPS; step += 1) {
    const vapourPsia = fastSaturationPressurePsia(tempF);
    const perDry = 1 / (pressurePsia - vapourPsia);
    const humidityRatio = MASS_RATIO * vapourPsia * perDry;
    const vapourEnthalpy = vapourEnthalpyBtuPerLb(tempF);
    const excess =
      temperatureWeight * tempF + enthalpyWeight * (0.24 * tempF + humidityRatio * vapourEnthalpy) - target;
    const slope =
      temperatureWeight +
      enthalpyWeight *
        (moistHeatCapacity(humidityRatio) +
          vapourEnthalpy * MASS_RATIO * pressurePsia * saturationPressureSlope(tempF) * perDry * perDry);
    const move = excess / slope;
    tempF = Math.min(tempF - move, highestF);
    if (Math.abs(move) < LAST_STEP_F) return tempF;
  }
  throw new NotConvergedError("temperature of saturated air", MAX_STEPS, tempF, "°F");
}
