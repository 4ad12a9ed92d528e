/**
 * A number as screens and paper show it: fixed digits, thousands grouped, a true minus sign.
 *
 * @throws {RangeError} for NaN and infinities: a missing number is shown in words, never as a number.
 */
export function numberText(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new RangeError("Only a finite number can be shown as a number.");
  const text = value.toLocaleString("en-US", {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  });
  // Rounding can leave "-0": a sign with nothing behind it.
  return /^-[0.,]+$/.test(text) ? text.slice(1) : text.replace("-", "−");
}

/** The uncertainty behind a number, `± 1.2`, in the same digits. */
export function uncertaintyText(uncertainty: number, decimals: number): string {
  return `± ${numberText(uncertainty, decimals)}`;
}

/** A sentence begins with a capital. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
