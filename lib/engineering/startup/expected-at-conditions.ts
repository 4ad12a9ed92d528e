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
 * @param delivered - From {@link deliveredCapacity}.
 * @param expected - From the maker's data at the measured conditions, Btu/h and lb/h. Above 0 to count; moisture of 0 is a dry coil.
 * @returns Shares with the uncertainty of the readings; the maker's data are taken as exact.
 * @throws {@link OutOfRangeError} for a negative or unreal expected value.
 */
export function expectedAtConditions(
  delivered: Pick<DeliveredCapacity, "totalBtuh" | "sensibleBtuh" | "moistureLbPerH">,
  expected: ExpectedCapacity,
): ExpectedComparison {
  return {
    totalShare: share("expected.totalBtuh", delivered.totalBtuh, expected.totalBtuh, "Btu/h", 1e6),
    sensibleShare: share(
      "expected.sensibleBtuh",
      delivered.sensibleBtuh,
      expected.sensibleBtuh,
      "Btu/h",
      1e6,
    ),
    moistureShare: share(
      "expected.moistureLbPerH",
      delivered.moistureLbPerH,
      expected.moistureLbPerH,
      "lb/h",
      500,
    ),
  };
}

function share<N extends string>(
  name: string,
  delivered: UncertainValue<N>,
  expected: number | null,
  unit: string,
  max: number,
): UncertainValue<N> | null {
  if (expected === null) return null;
  requireRange(name, expected, unit, 0, max);
  // Less than this is nothing that a startup could measure a share of.
  const least = unit === "lb/h" ? 0.05 : 100;
  return expected < least ? null : rescaled(delivered, 1 / expected);
}
