import { requireRange } from "../units";
import { rescaled } from "./combined-results";
import type { DeliveredCapacity } from "./delivered-capacity";
import type { UncertainValue } from "./with-uncertainty";

/** What the equipment should give at the conditions of the readings; `null` where it is not known. */
export type ExpectedCapacity = {
  /** Btu/h. In heating: heat given to the air, positive. */
  readonly totalBtuh: number | null;
  readonly sensibleBtuh: number | null;
  readonly moistureLbPerH: number | null;
};

export type ExpectedComparison = {
  /** Delivered over expected; `null` when nothing was expected or the expected value is not known. */
  readonly totalShare: UncertainValue | null;
  readonly sensibleShare: UncertainValue | null;
  readonly moistureShare: UncertainValue | null;
};

/**
 * Delivered capacity as a share of what the equipment should give at these very conditions, not of its nameplate.
 *
 * @param expected - From the maker's data at the measured conditions, Btu/h and lb/h. Above 0 to count; moisture of 0 is a dry
 * coil.
 * @param delivered - From {@link deliveredCapacity}.
 * @returns Shares with the uncertainty of the readings; the maker's data are taken as exact.
 * @throws {@link OutOfRangeError} for a negative or unreal expected value.
 * @see Quotient with the uncertainty of JCGM 100:2008 (recalled).
 */
export function expectedAtConditions(
  delivered: Pick<DeliveredCapacity, "totalBtuh" | "sensibleBtuh" | "moistureLbPerH">,
  expected: ExpectedCapacity,
): ExpectedComparison {
  requireExpected(expected, "expected.");
  const share = (name: keyof ExpectedCapacity): UncertainValue | null => {
    const value = expected[name];
    return value === null || value < EXPECTED[name].least ? null : rescaled(delivered[name], 1 / value);
  };
  return {
    totalShare: share("totalBtuh"),
    sensibleShare: share("sensibleBtuh"),
    moistureShare: share("moistureLbPerH"),
  };
}

/**
 * Refuses an unreal expected value, naming the field.
 *
 * @throws {@link OutOfRangeError} naming the field.
 */
export function requireExpected(expected: ExpectedCapacity, fieldPrefix: string): void {
  for (const name of ["totalBtuh", "sensibleBtuh", "moistureLbPerH"] as const) {
    const { unit, max } = EXPECTED[name];
    const value = expected[name];
    if (value !== null) requireRange(`${fieldPrefix}${name}`, value, unit, 0, max);
  }
}

/** `least`: less than this is nothing a startup could measure a share of. */
export const EXPECTED = {
  totalBtuh: { unit: "Btu/h", max: 1_000_000, least: 100 },
  sensibleBtuh: { unit: "Btu/h", max: 1_000_000, least: 100 },
  moistureLbPerH: { unit: "lb/h", max: 500, least: 0.05 },
} as const;
