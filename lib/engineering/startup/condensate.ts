import { requireRange } from "../units";
import { quotient } from "./combined-results";
import { type Reading, uncertainReading } from "./instrument";
import { type UncertainValue, withUncertainty } from "./with-uncertainty";

export type CondensateComparison = {
  /** Water caught, lb/h. */
  readonly caughtLbPerH: UncertainValue;
  /** Moisture removal by the air side, lb/h. */
  readonly airSideLbPerH: UncertainValue;
  /** Caught over air side; `null` when the air side removes less than 0.05 lb/h. */
  readonly share: UncertainValue | null;
  /** True when the difference lies within its expanded uncertainty. */
  readonly agree: boolean;
};

/**
 * Water caught at the drain against the moisture the air readings say was removed: two ways that share no instrument.
 *
 * @param input.condensateLb - Weight of the water caught, lb. 0 to 100.
 * @param input.minutes - How long it was caught, min, after the drain runs steadily. 1 to 1,440.
 * @param input.moistureLbPerH - Moisture removal by the air side over the same time, lb/h.
 * @returns Both removals and their difference, lb/h, with expanded uncertainty.
 * @throws {@link OutOfRangeError} naming the input.
 * @see Conservation of water (physics); difference against its expanded uncertainty as in JCGM 100:2008 (recalled).
 */
export function condensateComparison(input: {
  readonly condensateLb: Reading;
  readonly minutes: number;
  readonly moistureLbPerH: UncertainValue;
}): CondensateComparison {
  const { minutes, moistureLbPerH: airSide } = input;
  requireRange("condensateLb", input.condensateLb.value, "lb", 0, 100);
  requireRange("condensateMinutes", minutes, "min", 1, 1_440);
  requireRange("moistureLbPerH", airSide.value, "lb/h", -500, 500);
  requireRange("uncertainty of moistureLbPerH", airSide.standardUncertainty, "lb/h", 0, 500);
  const scale = uncertainReading("condensateLb", input.condensateLb, "lb", 1);
  const caughtLbPerH = withUncertainty(
    ({ condensateLb }: Readonly<Record<"condensateLb", number>>) => (condensateLb * 60) / minutes,
    { condensateLb: scale },
  );
  const difference = Math.abs(caughtLbPerH.value - airSide.value);
  return {
    caughtLbPerH,
    airSideLbPerH: airSide,
    share: airSide.value < 0.05 ? null : quotient(caughtLbPerH, airSide),
    agree: difference <= Math.hypot(caughtLbPerH.expandedUncertainty, airSide.expandedUncertainty),
  };
}
