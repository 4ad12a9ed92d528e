import { type Verdict, verdictOnInterval } from "../findings";
import { requireRange } from "../units";

/** A measured number. `uncertainty` is expanded (k = 2) in the same unit; `null`: the instrument's accuracy is not known. */
export type Measured = { readonly value: number; readonly uncertainty: number | null };

export type Range = { readonly min: number | null; readonly max: number | null };

/**
 * The verdict on a measured number, honest about an instrument whose accuracy is not known:
 * its value is then trusted only outside a band around the limit.
 *
 * @param measured - The number with its expanded uncertainty or `null`.
 * @param range - The limits in the same unit; an open end is `null`.
 * @param unknownAccuracyBandPct - Width of that band, % of the nearest limit or, when that is larger, of half the allowed
 * range. 0 to 100.
 * @returns The verdict of {@link verdictOnInterval}.
 * @throws {@link OutOfRangeError} for a band outside 0 to 100 %.
 * @see JCGM 106:2012, conformity with guard bands (recalled); the band for unknown accuracy is common practice, no source.
 */
export function verdictOnMeasured(measured: Measured, range: Range, unknownAccuracyBandPct: number): Verdict {
  requireRange("band for unknown accuracy", unknownAccuracyBandPct, "%", 0, 100);
  const uncertainty =
    measured.uncertainty ?? (unknownAccuracyBandPct / 100) * bandScale(measured.value, range);
  return verdictOnInterval(measured.value, uncertainty, range);
}

/**
 * Scales a measured number and its uncertainty, as when it is shown as a share of a design value.
 *
 * @param measured - The number with its uncertainty, any unit.
 * @param factor - Finite, not 0: for instance 100 over a design value.
 * @returns Value and uncertainty times the factor; the uncertainty stays 0 or more.
 * @see Linear propagation, JCGM 100:2008 5.1 (recalled).
 */
export function scaled(measured: Measured, factor: number): Measured {
  return {
    value: measured.value * factor,
    uncertainty: measured.uncertainty === null ? null : measured.uncertainty * Math.abs(factor),
  };
}

/**
 * Refuses a measured number outside its plausible range, naming the field.
 *
 * @param name - Name of the field.
 * @param measured - The number with its uncertainty; `null` passes.
 * @param unit - Unit of both.
 * @param min - Least plausible value, in that unit; below 0 where the quantity allows.
 * @param max - Most plausible value, in that unit; above min, 0 or more.
 * @throws {@link OutOfRangeError} naming the field.
 */
export function requireMeasured(
  name: string,
  measured: Measured | null,
  unit: string,
  min: number,
  max: number,
): void {
  if (measured === null) return;
  requireRange(name, measured.value, unit, min, max);
  if (measured.uncertainty !== null)
    requireRange(`uncertainty of ${name}`, measured.uncertainty, unit, 0, max - min);
}

function bandScale(value: number, { min, max }: Range): number {
  if (min === null || max === null) return Math.abs(min ?? max ?? 0);
  const nearest = Math.abs(value - min) <= Math.abs(value - max) ? min : max;
  return Math.max(Math.abs(nearest), (max - min) / 2);
}
