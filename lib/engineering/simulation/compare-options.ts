import { ImpossibleStateError } from "../errors";
import { simulateYear } from "./simulate-year";
import type { YearInput } from "./year-plan";
import type { YearResult } from "./year-result";

/** A named way to build or set the system. */
export type YearOption = { readonly name: string } & Partial<
  Pick<YearInput, "house" | "system" | "controls" | "ventilation" | "dehumidifier">
>;
export type ComparedOption = { readonly name: string; readonly year: YearResult };

/**
 * The same year for several options, driest first.
 *
 * @param base - Ranges at `YearInput`.
 * @param options - 1 to 12 of them, each replacing parts of the base; names differ.
 * @returns One result an option, by hours above the limit, fewest first; equal ones in the order given.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} as `simulateYear`, or for no options, too many or equal names.
 * @see `simulateYear` (physics).
 */
export function compareOptions(base: YearInput, options: readonly YearOption[]): readonly ComparedOption[] {
  if (options.length < 1 || options.length > 12) {
    throw new ImpossibleStateError(`Compare 1 to 12 options; ${options.length} are given.`, ["options"]);
  }
  if (new Set(options.map((one) => one.name)).size !== options.length) {
    throw new ImpossibleStateError("Two options have the same name; give each its own.", ["options"]);
  }
  return options
    .map(({ name, ...changes }) => ({ name, year: simulateYear({ ...base, ...changes }) }))
    .sort((a, b) => a.year.hoursAboveLimit - b.year.hoursAboveLimit);
}
