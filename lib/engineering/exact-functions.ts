import atan2 from "@stdlib/math-base-special-atan2";
import cos from "@stdlib/math-base-special-cos";
import exp from "@stdlib/math-base-special-exp";
import ln from "@stdlib/math-base-special-ln";
import sin from "@stdlib/math-base-special-sin";

/*
 * The language defines +, −, ×, ÷ and Math.sqrt to the last bit, but leaves the last digit of Math.exp, log, sin, cos, atan2 and of powers
 * to each engine. What a forecast is made of is therefore computed with these, which are made of exactly defined operations only (FreeBSD's
 * msun in plain JavaScript, error below 1 unit in the last place): the same inputs give the same bytes in every browser and on the server.
 */

export { atan2, cos, exp, ln, sin };

/**
 * A power of a positive number; squares and cubes are written as products.
 *
 * @param base - More than 0.
 * @param exponent - −1,000 to 1,000.
 * @returns `base^exponent`, within 1e-15 · |exponent · ln base| of it.
 * @see Definition: exp(exponent · ln base) (computed).
 */
export function power(base: number, exponent: number): number {
  return exp(exponent * ln(base));
}
