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
  const collected = collectSearch(input, keep, places.length);
  for (const place of places) {
    if (collected.isEnoughAt(effortOf(input.space, place))) return;
    collected.take(tryCombination(input, place));
    yield collected.progress();
  }
}

/**
 * Collects what combinations give, in the order of their effort, whoever ran them.
 *
 * @param input - What comfort leaves, °F·h, 0 to 100,000.
 * @param keep - How many to find, 1 to 20.
 * @param of - Combinations there are, 1 to 5,000.
 * @returns `take` the next one's result; `isEnoughAt` an effort when nothing of that effort or more can matter any more; the `progress`.
 * @see {@link searchSettings} (computed).
 */
export function collectSearch(
  input: Pick<SearchInput, "mostAboveSetpointDegreeHours">,
  keep: number,
  of: number,
) {
  const kept: SearchFound[] = [];
  const missed: SearchFound[] = [];
  let tried = 0;
  const most = input.mostAboveSetpointDegreeHours;
  const discomfort = (one: SearchFound) => Math.max(0, one.aboveSetpointDegreeHours - most);
  return {
    isEnoughAt: (effort: number): boolean => {
      const last = kept[keep - 1];
      return last !== undefined && effort > last.effort;
    },
    take: (found: SearchFound): void => {
      tried += 1;
      (found.keepsPromise ? kept : missed).push(found);
      kept.sort((a, b) => a.effort - b.effort || a.kwh - b.kwh);
      missed.sort((a, b) => discomfort(a) - discomfort(b) || a.hoursAboveLimit - b.hoursAboveLimit);
      missed.length = Math.min(missed.length, keep);
    },
    progress: (): SearchProgress => ({
      tried,
      of,
      best: kept.slice(0, keep),
      closest: kept.length > 0 ? [] : [...missed],
    }),
  };
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
    found.push(turnSetting(input, here, axis));
    found.sort((a, b) => b.spreadHours - a.spreadHours);
    yield [...found];
  }
}

/**
 * Turns one setting through its choices while the others stay.
 *
 * @param input - Ranges at `SearchInput`.
 * @param here - The combination to turn around, as it ran.
 * @param axis - The setting.
 * @returns Every choice that goes with the others, h, °F·h and kWh.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} as `simulateYear`.
 * @see One at a time (computed).
 */
export function turnSetting(input: SearchInput, here: SearchFound, axis: SearchAxis): SettingSensitivity {
  const choices = input.space[axis].flatMap((_, index) => {
    const place = { ...here.place, [axis]: index };
    if (index === here.place[axis]) return [here];
    const fits = (input.space.systems[place.capacity]?.[place.airflow] ?? null) !== null;
    return fits ? [tryCombination(input, place)] : [];
  });
  const hours = choices.map((one) => one.hoursAboveLimit);
  return { axis, choices, spreadHours: Math.max(...hours) - Math.min(...hours) };
}
