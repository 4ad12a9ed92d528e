import { requireRange } from "../units";
import {
  combinations,
  effortOf,
  SEARCH_AXES,
  type SearchAxis,
  type SearchFound,
  type SearchInput,
  type SearchPlace,
  tryCombination,
} from "./search-space";

/** Where a search stands. */
export type SearchProgress = {
  readonly tried: number;
  /** Combinations there are; the search may end before it has tried all. */
  readonly of: number;
  /** Those that keep the promise, least effort first, then least electricity. */
  readonly best: readonly SearchFound[];
  /** While none keeps it: those that come closest, fewest hours above the limit first among the comfortable ones. */
  readonly closest: readonly SearchFound[];
};

/**
 * Searches capacity, airflow, controls, ventilation and dehumidifier for the few combinations that keep the promise at least effort. As
 * they are tried in the order of effort, the search ends as soon as `keep` are found and all of the same effort have been tried: what is
 * left can only take more. Nothing is skipped by guess.
 *
 * @param input - Ranges at `SearchInput`.
 * @param keep - How many to find, 1 to 20.
 * @returns A generator of the state after every year; stop between two to cancel. The last state is the answer.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} naming the field, or as `simulateYear`.
 * @see `simulateYear` (physics); exhaustive in the order of effort (computed).
 */
export function* searchSettings(input: SearchInput, keep: number): Generator<SearchProgress, void, void> {
  requireRange("keep", keep, "", 1, 20);
  const places = combinations(input);
  const kept: SearchFound[] = [];
  const missed: SearchFound[] = [];
  for (const [index, place] of places.entries()) {
    const enough = kept[keep - 1];
    if (enough !== undefined && effortOf(input.space, place) > enough.effort) return;
    const found = tryCombination(input, place);
    (found.keepsPromise ? kept : missed).push(found);
    kept.sort((a, b) => a.effort - b.effort || a.kwh - b.kwh);
    const most = input.mostAboveSetpointDegreeHours;
    const discomfort = (one: SearchFound) => Math.max(0, one.aboveSetpointDegreeHours - most);
    missed.sort((a, b) => discomfort(a) - discomfort(b) || a.hoursAboveLimit - b.hoursAboveLimit);
    missed.length = Math.min(missed.length, keep);
    yield {
      tried: index + 1,
      of: places.length,
      best: kept.slice(0, keep),
      closest: kept.length > 0 ? [] : [...missed],
    };
  }
}

/** How much one setting moves the hours above the limit, the others staying. */
export type SettingSensitivity = {
  readonly axis: SearchAxis;
  readonly choices: readonly SearchFound[];
  /** Most minus least hours above the limit. */
  readonly spreadHours: number;
};

/**
 * Which setting matters most around one combination: each is turned through its choices while the others stay.
 *
 * @param input - Ranges at `SearchInput`.
 * @param at - The combination to turn around, places from 0.
 * @returns A generator of what has been turned so far, the setting that moves most first; stop between two to cancel.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} as {@link searchSettings}.
 * @see One at a time (computed).
 */
export function* settingSensitivity(
  input: SearchInput,
  at: SearchPlace,
): Generator<readonly SettingSensitivity[], void, void> {
  combinations(input);
  const here = tryCombination(input, at);
  const found: SettingSensitivity[] = [];
  for (const axis of SEARCH_AXES) {
    const choices = input.space[axis].flatMap((_, index) => {
      const place = { ...at, [axis]: index };
      if (index === at[axis]) return [here];
      const fits = (input.space.systems[place.capacity]?.[place.airflow] ?? null) !== null;
      return fits ? [tryCombination(input, place)] : [];
    });
    const hours = choices.map((one) => one.hoursAboveLimit);
    found.push({ axis, choices, spreadHours: Math.max(...hours) - Math.min(...hours) });
    found.sort((a, b) => b.spreadHours - a.spreadHours);
    yield [...found];
  }
}
