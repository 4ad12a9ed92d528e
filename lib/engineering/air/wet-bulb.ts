import { NotConvergedError } from "../errors";
import { psychrometrics } from "./psychrometrics";

const FREEZING_F = 32;
/** Close enough to freezing for any reading, and selects the ice equation. */
const JUST_BELOW_FREEZING_F = 32 - 1e-11;
/**
 * The humidity ratio rises by at least 1.7e-4 lb/lb for each °F of wet bulb (0.24 over the largest denominator of
 * the equations), so this residual means a wet bulb within 1e-9 °F.
 */
const TOLERANCE_LB_PER_LB = 1.7e-13;
/** False position settles in 6 to 9 steps. Very dry air, where the library flattens the curve, needs halving. */
const FALSE_POSITION_STEPS = 15;
const MAX_STEPS = 75;

/**
 * Thermodynamic wet bulb of air whose humidity ratio is known.
 *
 * There is no closed form. psychrolib's own inverse halves its bracket down to 0.0018 °F, a visible staircase under
 * finite differences; this solves the same equation (psychrolib's) by false position with the Illinois
 * correction, bracketed by dew point and dry bulb, to 1e-9 °F, in about half the evaluations.
 *
 * The handbook's equations for a wet and an iced bulb do not meet at 32 °F: in a narrow band of dry, cool air one
 * humidity ratio has an answer on each side. The iced answer is returned wherever it exists, as real-gas code does
 * too, so that the result is unique.
 *
 * @param dryBulbF - Dry bulb, °F, −148 to 392.
 * @param dewPointF - Dew point (frost point below freezing) of the same air, °F, −148 to the dry bulb.
 * @param humidityRatio - Humidity ratio, lb/lb, more than 0 and up to saturation at the dry bulb (1 at most).
 * @param pressurePsia - Atmospheric pressure, psia, above the saturation pressure at the dry bulb and up to 17.
 * @returns Wet bulb, °F.
 * @throws {@link NotConvergedError} when the steps run out.
 * @see ASHRAE Handbook, Fundamentals 2017, ch. 1 eq. 33 and 35 (published).
 */
export function solveWetBulbF(
  dryBulbF: number,
  dewPointF: number,
  humidityRatio: number,
  pressurePsia: number,
): number {
  const excess = (wetBulbF: number): number =>
    psychrometrics.GetHumRatioFromTWetBulb(dryBulbF, wetBulbF, pressurePsia) - humidityRatio;

  let low = dewPointF;
  let high = dryBulbF;
  if (low < FREEZING_F && high >= FREEZING_F) {
    if (excess(JUST_BELOW_FREEZING_F) > 0) high = JUST_BELOW_FREEZING_F;
    else low = FREEZING_F;
  }

  let excessLow = excess(low);
  let excessHigh = excess(high);
  // Saturated air: the ends meet, and rounding (or the step at 32 °F) may leave no change of sign between them.
  if (excessHigh <= 0) return high;
  if (excessLow >= 0) return low;

  let residual = excessHigh;
  let lastKept: "low" | "high" | null = null;
  for (let step = 0; step < MAX_STEPS; step += 1) {
    const guess =
      step < FALSE_POSITION_STEPS
        ? (low * excessHigh - high * excessLow) / (excessHigh - excessLow)
        : (low + high) / 2;
    // Rounding may put the guess a hair outside its bracket.
    const middle = Math.min(Math.max(guess, low), high);
    residual = excess(middle);
    if (Math.abs(residual) < TOLERANCE_LB_PER_LB) return middle;
    if (residual > 0) {
      high = middle;
      excessHigh = residual;
      if (lastKept === "low") excessLow /= 2;
      lastKept = "low";
    } else {
      low = middle;
      excessLow = residual;
      if (lastKept === "high") excessHigh /= 2;
      lastKept = "high";
    }
  }
  throw new NotConvergedError("wet bulb", MAX_STEPS, residual, "lb/lb");
}
