import { NotConvergedError } from "../errors";
import { exp, ln } from "../exact-functions";

/*
 * ASHRAE Handbook, Fundamentals 2017, ch. 1 eq. 5 (ice) and 6 (liquid water), in °R and psia: psychrolib has the same equations, but on
 * Math.exp, log and pow, whose last digit every engine rounds in its own way.
 */

/** Where the ice equation hands over to the liquid one, °F. */
const TRIPLE_POINT_F = 32.018;
const RANKINE_AT_0F = 459.67;
const LOWEST_F = -148;
const HIGHEST_F = 392;
const LAST_STEP_F = 1e-10;
const MAX_STEPS = 60;

/**
 * Pressure of water vapour over liquid water or, up to 32.018 °F, ice.
 *
 * @param tempF - °F, −148 to 392.
 * @returns psia.
 * @see ASHRAE Handbook, Fundamentals 2017, ch. 1 eq. 5 and 6 (published; its table 3 checked in tests).
 */
export function saturationPressurePsia(tempF: number): number {
  return exp(tempF <= TRIPLE_POINT_F ? lnOverIce(tempF) : lnOverWater(tempF));
}

/**
 * Temperature at which water vapour of this pressure is saturated: the inverse of {@link saturationPressurePsia}.
 *
 * No closed form. ln p is concave in temperature, so Newton's method climbs onto the root from the left without turning, and from the right
 * is on the left after one step.
 *
 * @param vapourPsia - psia, that of −148 to 392 °F.
 * @param highestF - Highest answer, and where the search begins: the dry bulb, °F, −148 to 392.
 * @returns Dew point, below 32.018 °F frost point, °F.
 * @throws {@link NotConvergedError} when the steps run out.
 * @see ASHRAE Handbook, Fundamentals 2017, ch. 1 eq. 5 and 6 (published).
 */
export function dewPointOfPressureF(vapourPsia: number, highestF: number): number {
  const target = ln(vapourPsia);
  const ice = target <= lnOverIce(TRIPLE_POINT_F);
  let tempF = highestF;
  for (let step = 0; step < MAX_STEPS; step += 1) {
    const excess = (ice ? lnOverIce(tempF) : lnOverWater(tempF)) - target;
    const move = excess / (ice ? slopeOverIce(tempF) : slopeOverWater(tempF));
    tempF = Math.min(HIGHEST_F, Math.max(LOWEST_F, tempF - move));
    if (Math.abs(move) < LAST_STEP_F) return Math.min(tempF, highestF, ice ? TRIPLE_POINT_F : highestF);
  }
  throw new NotConvergedError("dew point", MAX_STEPS, tempF, "°F");
}

function lnOverIce(tempF: number): number {
  const t = tempF + RANKINE_AT_0F;
  return (
    -1.0214165e4 / t -
    4.8932428 -
    5.3765794e-3 * t +
    1.9202377e-7 * t * t +
    3.5575832e-10 * t * t * t -
    9.0344688e-14 * t * t * t * t +
    4.1635019 * ln(t)
  );
}

function slopeOverIce(tempF: number): number {
  const t = tempF + RANKINE_AT_0F;
  return (
    1.0214165e4 / (t * t) -
    5.3765794e-3 +
    2 * 1.9202377e-7 * t +
    3 * 3.5575832e-10 * t * t -
    4 * 9.0344688e-14 * t * t * t +
    4.1635019 / t
  );
}

function lnOverWater(tempF: number): number {
  const t = tempF + RANKINE_AT_0F;
  return (
    -1.0440397e4 / t -
    11.29465 -
    2.7022355e-2 * t +
    1.289036e-5 * t * t -
    2.4780681e-9 * t * t * t +
    6.5459673 * ln(t)
  );
}

function slopeOverWater(tempF: number): number {
  const t = tempF + RANKINE_AT_0F;
  return (
    1.0440397e4 / (t * t) - 2.7022355e-2 + 2 * 1.289036e-5 * t - 3 * 2.4780681e-9 * t * t + 6.5459673 / t
  );
}
