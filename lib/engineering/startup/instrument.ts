import { ImpossibleStateError } from "../errors";
import { requireRange } from "../units";
import type { UncertainInput } from "./with-uncertainty";

/** How an instrument's accuracy is stated: ± limits that hold for every unit sold, or a standard uncertainty from a certificate. */
export type AccuracyKind = "rectangular" | "standard";

/** The unit of an accuracy that grows with the reading. */
export const PERCENT_OF_READING = "% of reading";

export type Instrument = {
  readonly instrumentId: string;
  /** In `unit`. 0 or more. */
  readonly accuracy: number;
  readonly accuracyKind: AccuracyKind;
  /** The unit of the reading, or {@link PERCENT_OF_READING}. */
  readonly unit: string;
  /** Last day of a valid calibration, YYYY-MM-DD; `null` when not known. */
  readonly calibrationDue: string | null;
};

/** One reading. `instrument: null`: not said with which, so its accuracy is not known. */
export type Reading = { readonly value: number; readonly instrument: Instrument | null };

/**
 * Standard uncertainty from a stated accuracy.
 *
 * @param accuracy - Stated accuracy, ±. 0 or more.
 * @param kind - "rectangular": limits ±a with nothing known between them; "standard": already a standard uncertainty.
 * @returns Standard uncertainty in the same unit: a/√3, or the accuracy itself.
 * @throws {@link OutOfRangeError} for a negative or unreal accuracy.
 * @see JCGM 100:2008, 4.3.7 (recalled).
 */
export function accuracyToStandardUncertainty(accuracy: number, kind: AccuracyKind): number {
  requireRange("instrument accuracy", accuracy, "", 0, 1e9);
  return kind === "rectangular" ? accuracy / Math.sqrt(3) : accuracy;
}

/**
 * A reading as an uncertain input. Without an instrument the uncertainty is 0 here, and whoever reports
 * the result must say that the accuracy is not known.
 *
 * @param name - The field's name, for the error.
 * @param unit - The unit of the reading, such as "°F".
 * @param systematicShare - Share of the uncertainty common to all readings of one instrument. 0 to 1.
 * @throws {@link ImpossibleStateError} when the instrument's accuracy is in another unit.
 */
export function uncertainReading(
  name: string,
  reading: Reading,
  unit: string,
  systematicShare: number,
): UncertainInput {
  const { value, instrument } = reading;
  if (instrument === null) return { value, standardUncertainty: 0, instrumentId: null };
  const ownUnit = instrument.unit === unit;
  if (!ownUnit && instrument.unit !== PERCENT_OF_READING) {
    throw new ImpossibleStateError(
      `${name} is in ${unit}, but the accuracy of its instrument is in "${instrument.unit}"; state the accuracy in ${unit} or as "${PERCENT_OF_READING}".`,
      [name],
    );
  }
  const accuracy = ownUnit ? instrument.accuracy : (instrument.accuracy * Math.abs(value)) / 100;
  return {
    value,
    standardUncertainty: accuracyToStandardUncertainty(
      requireRange(`accuracy of the instrument of ${name}`, accuracy, unit, 0, 1e9),
      instrument.accuracyKind,
    ),
    // What a gauge set has wrong in psig says nothing of its clamp in °F: only readings of one unit share an error.
    instrumentId: `${instrument.instrumentId} ${unit}`,
    systematicShare,
  };
}
