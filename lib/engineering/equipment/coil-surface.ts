import { vapourEnthalpyBtuPerLb } from "../air/vapour-enthalpy";
import { NotConvergedError } from "../errors";
import { COIL, type CoilAtFlow } from "./coil-numbers";
import {
  dryBulbAt,
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
 * Saturated air at a temperature.
 *
 * @param numbers - Holds `pressurePsia` and `atF` (−10 to 140 °F); receives `saturatedPsia` and `saturatedRatio`.
 * @see `fastSaturationPressurePsia` (computed); ASHRAE 2017 ch. 1 eq. 20 (recalled).
 */
export function saturateAt(numbers: Float64Array): void {
  const vapourPsia = fastSaturationPressurePsia(numbers[COIL.atF] ?? 0);
  numbers[COIL.saturatedPsia] = vapourPsia;
  numbers[COIL.saturatedRatio] = (MASS_RATIO * vapourPsia) / ((numbers[COIL.pressurePsia] ?? 0) - vapourPsia);
}

/**
 * Enthalpy of the air at the surface: saturated, or dry with the entering water where the surface is above the dew point.
 *
 * @param numbers - Holds `atF` (surface, −10 to 140 °F) and the entering humidity ratio; receives `surfaceEnthalpy`, Btu per lb of dry air.
 * @see A surface above the dew point only cools (physics).
 */
export function surfaceEnthalpyAt(numbers: Float64Array): void {
  saturateAt(numbers);
  const held = Math.min(numbers[COIL.saturatedRatio] ?? 0, numbers[COIL.enteringHumidityRatio] ?? 0);
  numbers[COIL.surfaceEnthalpy] = moistEnthalpy(numbers[COIL.atF] ?? 0, held);
}

/**
 * ADP at which held temperature + approach(capacity) closes on itself: dry in closed form, wet from saturation.
 *
 * @param coil - The coil at its airflow.
 * @param numbers - Holds the entering air with its enthalpy, `leastF` (surface at no capacity, °F, 20…110) and `startF`; receives `adpF`.
 * @throws {@link NotConvergedError} when the steps run out.
 * @see Balance of the coil with a linear approach (physics).
 */
export function heldAdp(coil: CoilAtFlow, numbers: Float64Array): void {
  const enteringDbF = numbers[COIL.enteringDbF] ?? 0;
  const enteringHumidityRatio = numbers[COIL.enteringHumidityRatio] ?? 0;
  const leastF = numbers[COIL.leastF] ?? 0;
  if (leastF >= enteringDbF) {
    numbers[COIL.adpF] = enteringDbF;
    return;
  }
  const gain = coil.approachSlopeFPerBtuh * coil.contactLbPerH;
  const dryGain = gain * moistHeatCapacity(enteringHumidityRatio);
  const dryF = (leastF + dryGain * enteringDbF) / (1 + dryGain);
  numbers[COIL.atF] = dryF;
  saturateAt(numbers);
  if ((numbers[COIL.saturatedRatio] ?? 0) >= enteringHumidityRatio) {
    numbers[COIL.adpF] = dryF;
    return;
  }
  if (gain === 0) {
    numbers[COIL.adpF] = leastF;
    return;
  }
  numbers[COIL.temperatureWeight] = 1;
  numbers[COIL.enthalpyWeight] = gain;
  numbers[COIL.target] = leastF + gain * (numbers[COIL.enteringEnthalpy] ?? 0);
  numbers[COIL.solvedF] = numbers[COIL.startF] ?? 0;
  numbers[COIL.highestF] = enteringDbF;
  solveSaturated(numbers);
  numbers[COIL.adpF] = numbers[COIL.solvedF] ?? 0;
}

/**
 * Temperature of a surface whose air has this enthalpy: dry in closed form, wet from saturation.
 *
 * @param numbers - Holds `surfaceEnthalpy` (Btu/lb, of air at −10 to 140 °F), the entering air and `startF`; receives `adpF`.
 * @throws {@link NotConvergedError} when the steps run out.
 * @see Enthalpy of moist air, ASHRAE 2017 ch. 1 eq. 30 (recalled).
 */
export function surfaceTemperature(numbers: Float64Array): void {
  const enthalpy = numbers[COIL.surfaceEnthalpy] ?? 0;
  const enteringHumidityRatio = numbers[COIL.enteringHumidityRatio] ?? 0;
  const dryF = dryBulbAt(enthalpy, enteringHumidityRatio);
  // The polynomial is only asked inside its range: a "dry" surface far below any dew point is wet for sure.
  if (dryF > 0) {
    numbers[COIL.atF] = dryF;
    saturateAt(numbers);
    if ((numbers[COIL.saturatedRatio] ?? 0) >= enteringHumidityRatio) {
      numbers[COIL.adpF] = dryF;
      return;
    }
  }
  numbers[COIL.temperatureWeight] = 0;
  numbers[COIL.enthalpyWeight] = 1;
  numbers[COIL.target] = enthalpy;
  numbers[COIL.solvedF] = numbers[COIL.startF] ?? 0;
  numbers[COIL.highestF] = numbers[COIL.enteringDbF] ?? 0;
  solveSaturated(numbers);
  numbers[COIL.adpF] = numbers[COIL.solvedF] ?? 0;
}

/**
 * The temperature t at which `temperatureWeight · t + enthalpyWeight · h_sat(t) = target`.
 *
 * No closed form. The left side is convex and rising, so Newton's method descends onto the root without turning from any
 * start to its right, and from a start to its left it is on the right after one step.
 *
 * @param numbers - Holds `pressurePsia` (6 to 17), `temperatureWeight` (0 or 1), `enthalpyWeight` (°F·lb/Btu, more than 0), `target` (it
 * must lie on the curve from −10 to 140 °F), `highestF` (highest answer, °F, 40…120) and in `solvedF` where the solution starts, °F, −10 to
 * 140; `solvedF` receives the answer.
 * @throws {@link NotConvergedError} when the steps run out.
 * @see Newton's method on a convex function (computed).
 */
export function solveSaturated(numbers: Float64Array): void {
  const pressurePsia = numbers[COIL.pressurePsia] ?? 0;
  const temperatureWeight = numbers[COIL.temperatureWeight] ?? 0;
  const enthalpyWeight = numbers[COIL.enthalpyWeight] ?? 0;
  const target = numbers[COIL.target] ?? 0;
  const highestF = numbers[COIL.highestF] ?? 0;
  let tempF = numbers[COIL.solvedF] ?? 0;
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
    if (Math.abs(move) < LAST_STEP_F) {
      numbers[COIL.solvedF] = tempF;
      return;
    }
  }
  throw new NotConvergedError("temperature of saturated air", MAX_STEPS, tempF, "°F");
}

/**
 * Wet bulb of the entering air, taken as the temperature of saturated air of its enthalpy.
 *
 * @param numbers - Holds the entering air, and in `solvedF` where the solution starts; `solvedF` receives the answer, °F.
 * @throws {@link NotConvergedError} when the steps run out.
 * @see ASHRAE 2017 ch. 1 eq. 33 without the heat of the water that evaporates (recalled).
 */
export function solveWetBulb(numbers: Float64Array): void {
  const enteringDbF = numbers[COIL.enteringDbF] ?? 0;
  numbers[COIL.temperatureWeight] = 0;
  numbers[COIL.enthalpyWeight] = 1;
  numbers[COIL.target] = moistEnthalpy(enteringDbF, numbers[COIL.enteringHumidityRatio] ?? 0);
  numbers[COIL.highestF] = enteringDbF;
  solveSaturated(numbers);
}
