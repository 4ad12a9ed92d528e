/** Stands for a cell that holds something else than a number; no cell reads as infinite. */
export const NO_NUMBER = Number.NEGATIVE_INFINITY;

const MINUS = 45;
const POINT = 46;
const ZERO = 48;
const NINE = 57;
/** More digits may be more than a double holds exactly. */
const MOST_DIGITS = 15;
const TENTHS = Float64Array.from({ length: MOST_DIGITS + 1 }, (_, places) => 10 ** places);

/**
 * The number of a cell written in at most 15 digits with a point or none: then whole number and power of ten are exact
 * and their quotient is what Number() gives (Clinger 1990). NaN for an empty cell, {@link NO_NUMBER} for anything else.
 */
export function plainNumber(text: Uint8Array, from: number, to: number): number {
  if (from === to) return Number.NaN;
  let at = from;
  const negative = text[at] === MINUS;
  if (negative) at++;
  let whole = 0;
  let digits = 0;
  let places = 0;
  let seenPoint = false;
  for (; at < to; at++) {
    const code = text[at] ?? 0;
    if (code >= ZERO && code <= NINE) {
      whole = whole * 10 + (code - ZERO);
      digits++;
      if (seenPoint) places++;
    } else if (code === POINT && !seenPoint) seenPoint = true;
    else return NO_NUMBER;
  }
  if (digits === 0 || digits > MOST_DIGITS) return NO_NUMBER;
  const value = whole / (TENTHS[places] ?? 1);
  return negative ? -value : value;
}
