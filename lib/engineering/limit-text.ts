/** More would say nothing to a reader. */
const MOST_MORE = 3;
/** Closer than this is the limit itself, as far as sums of doubles can tell. */
const SAME = 1e-9;

/**
 * How many decimals a number needs so that it does not look like a limit it misses: 1.152 beside 1.15 needs three.
 *
 * @param value - The number that is judged, in any unit, −1e12 to 1e12.
 * @param limits - What it is judged by, in the same unit and range; `null` for a side without a limit; −1e12 to 1e12.
 * @param decimals - Usual decimals, 0 to 6.
 * @returns The usual decimals, or up to three more.
 * @see Rounding (computed).
 */
export function decimalsBeside(value: number, limits: readonly (number | null)[], decimals: number): number {
  for (let more = 0; more < MOST_MORE; more++) {
    const shown = Number(value.toFixed(decimals + more));
    const isTrue = limits.every(
      (limit) =>
        limit === null ||
        Math.abs(value - limit) < SAME * Math.max(1, Math.abs(limit)) ||
        Math.sign(shown - limit) === Math.sign(value - limit),
    );
    if (isTrue) return decimals + more;
  }
  return decimals + MOST_MORE;
}

/**
 * A number as it stands beside its limits, {@link decimalsBeside}.
 *
 * @param value - The number that is judged, in any unit, −1e12 to 1e12.
 * @param limits - What it is judged by, in the same unit and range; `null` for a side without a limit; −1e12 to 1e12.
 * @param decimals - Usual decimals, 0 to 6.
 * @returns Digits without unit.
 * @see Rounding (computed).
 */
export function textBeside(value: number, limits: readonly (number | null)[], decimals: number): string {
  return value.toFixed(decimalsBeside(value, limits, decimals));
}
