import { type Figure, type Verdict, verdictOnInterval } from "../findings";
import type { Measured, Range } from "./measured";

/**
 * The figure of a measured number.
 *
 * @param measured - The number with its uncertainty.
 * @param label - What it is.
 * @param unit - Its unit.
 * @param decimals - Digits after the point, 0 to 6.
 * @returns The figure, with its uncertainty when known.
 */
export function measuredFigure(label: string, measured: Measured, unit: string, decimals: number): Figure {
  const base = { label, value: measured.value, unit, decimals };
  return measured.uncertainty === null ? base : { ...base, uncertainty: measured.uncertainty };
}

/** Making a formatter costs more than using it a hundred times, so each is made once. */
const FORMATS = new Map<number, Intl.NumberFormat>();

/**
 * "1,234", "0.52": a number for a sentence.
 *
 * @param value - Finite number in any unit; 0 shows no minus.
 * @param decimals - Digits after the point, 0 to 6.
 * @returns Text.
 */
export function numberText(value: number, decimals: number): string {
  let format = FORMATS.get(decimals);
  if (format === undefined) {
    format = new Intl.NumberFormat("en-US", {
      minimumFractionDigits: decimals,
      maximumFractionDigits: decimals,
      signDisplay: "negative",
    });
    FORMATS.set(decimals, format);
  }
  return format.format(value).replace("-", "−");
}

/**
 * "1,234 ± 60 cfm", "1,234 cfm" for a figure of a table, or with the remark that the accuracy is not known.
 *
 * @param measured - The number with its uncertainty.
 * @param unit - Its unit.
 * @param decimals - Digits after the point, 0 to 6.
 * @returns Text.
 */
export function measuredText(measured: Measured, unit: string, decimals: number): string {
  const value = numberText(measured.value, decimals);
  if (measured.uncertainty === 0) return `${value} ${unit}`;
  return measured.uncertainty === null
    ? `${value} ${unit} (accuracy of the instrument not known)`
    : `${value} ± ${numberText(measured.uncertainty, decimals)} ${unit}`;
}

/**
 * Names of the inputs that are `null`.
 *
 * @param fieldPrefix - Put before each name.
 * @param inputs - Values by name.
 * @returns Names.
 */
export function missing(fieldPrefix: string, inputs: Readonly<Record<string, unknown>>): readonly string[] {
  return Object.entries(inputs).flatMap(([name, value]) => (value === null ? [`${fieldPrefix}${name}`] : []));
}

/**
 * The next step a verdict calls for.
 *
 * @param verdict - The verdict.
 * @param steps - What to do in the two cases.
 * @returns The step, or `null` when none is needed.
 */
export function nextStepFor(
  verdict: Verdict,
  steps: { readonly fallsShort: string; readonly cantTell: string },
): string | null {
  if (verdict === "falls short") return steps.fallsShort;
  return verdict === "can't tell" ? steps.cantTell : null;
}

/**
 * Says which accuracy of a directly read number would decide: the distance to the nearest limit, rounded down.
 *
 * @param measured - The number with its uncertainty.
 * @param range - Limits in the same unit.
 * @param scale - From that unit to the unit shown; more than 0.
 * @param unit - Unit shown.
 * @param what - The reading in words.
 * @returns One sentence.
 */
export function settledBy(
  measured: Measured,
  range: Range,
  scale: number,
  unit: string,
  what: string,
): string {
  const distances = [range.min, range.max].flatMap((limit) =>
    limit === null ? [] : [Math.abs(measured.value - limit)],
  );
  const passes = verdictOnInterval(measured.value, 0, range) === "meets";
  // The limit itself passes, so a failing interval must end just short of it.
  const distance = Math.min(...distances) * (passes ? 1 : 1 - 1e-9);
  const accuracy = roundedDown(distance * scale);
  return accuracy === null
    ? "The reading lies on the limit itself: no instrument would settle it; decide on other evidence."
    : `${what} to ±${accuracy.text} ${unit} (95 %) would settle it, if the reading stays the same.`;
}

/**
 * A positive number rounded down to one digit (two when it begins with 1), with its text; `null` when nothing is left.
 *
 * @param value - Any unit; 0 or less gives `null`.
 * @returns Number in the same unit and its text.
 * @see Rounding (computed).
 */
export function roundedDown(value: number): { readonly value: number; readonly text: string } | null {
  if (!(value > 1e-6 && value < 1e12)) return null;
  const exponent = Math.floor(Math.log10(value));
  const decimals = value < 2 * 10 ** exponent ? 1 - exponent : -exponent;
  const step = 10 ** -decimals;
  const rounded = Math.floor(value / step) * step;
  return { value: rounded, text: numberText(rounded, Math.max(0, decimals)) };
}
