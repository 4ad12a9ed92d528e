import { isEngineeringError } from "@/lib/engineering/errors";
import {
  type ForecastHouse,
  houseFromLoadSummary,
  type SearchFound,
  type SearchInput,
  type SearchProgress,
  type SettingSensitivity,
} from "@/lib/engineering/simulation";
import { collectSearch, turnSetting } from "@/lib/engineering/simulation/search-settings";
import { combinations, SEARCH_AXES, tryCombination } from "@/lib/engineering/simulation/search-space";

/** A search as it is asked: the house is made where it runs. */
export type SearchOrder = Omit<SearchInput, "house"> & {
  readonly house: Extract<ForecastHouse, { kind: "load summary" }>;
  /** How many to find. */
  readonly keep: number;
};

/** What one of several is to do: try its share of the combinations, or turn its share of the settings around one that was found. */
export type SearchTask = {
  readonly around: SearchFound | null;
  readonly index: number;
  readonly of: number;
};

export type SearchEvent =
  | { readonly kind: "ready"; readonly of: number }
  | { readonly kind: "tried"; readonly index: number; readonly found: SearchFound }
  | { readonly kind: "turned"; readonly setting: SettingSensitivity }
  | { readonly kind: "failed"; readonly problem: string }
  | { readonly kind: "done" };

/** One share of a search, combinations of least effort first. Stop between two events to cancel. */
export function* searchEvents(
  { house, keep: _keep, ...rest }: SearchOrder,
  { around, index, of }: SearchTask,
): Generator<SearchEvent, void, void> {
  try {
    const input = { ...rest, house: houseFromLoadSummary(house.load, rest.weather, house.changed).house };
    if (around === null) {
      const places = combinations(input);
      yield { kind: "ready", of: places.length };
      for (const [number, place] of places.entries()) {
        if (number % of !== index) continue;
        yield { kind: "tried", index: number, found: tryCombination(input, place) };
      }
    } else {
      for (const [number, axis] of SEARCH_AXES.entries()) {
        if (number % of === index) yield { kind: "turned", setting: turnSetting(input, around, axis) };
      }
    }
    yield { kind: "done" };
  } catch (error) {
    if (!isEngineeringError(error)) throw error;
    yield { kind: "failed", problem: error.message };
  }
}

/** Where a shared search stands after an event: `around` is there once it is settled which combination the settings are turned around. */
export type SearchStanding = {
  readonly progress: SearchProgress | null;
  readonly settings: readonly SettingSensitivity[];
  readonly around: SearchFound | null;
  readonly isDone: boolean;
};

/** Puts the shares together, however many there are and in whatever order they come: the answer is that of one. */
export function searchBoard(order: Pick<SearchOrder, "keep" | "mostAboveSetpointDegreeHours">) {
  const waiting = new Map<number, SearchFound>();
  const settings: SettingSensitivity[] = [];
  let collected: ReturnType<typeof collectSearch> | null = null;
  let of = 0;
  let next = 0;
  let settled = false;
  const takeInOrder = (): void => {
    for (
      let found = waiting.get(next);
      collected !== null && found !== undefined;
      found = waiting.get(next)
    ) {
      settled ||= collected.isEnoughAt(found.effort);
      if (settled) return;
      collected.take(found);
      waiting.delete(next);
      next += 1;
    }
    settled ||= collected !== null && next === of;
  };
  return (event: SearchEvent): SearchStanding => {
    if (event.kind === "ready" && collected === null) {
      of = event.of;
      collected = collectSearch(order, order.keep, of);
    }
    if (event.kind === "tried" && !settled) {
      waiting.set(event.index, event.found);
      takeInOrder();
    }
    if (event.kind === "turned") {
      settings.push(event.setting);
      settings.sort(
        (a, b) => b.spreadHours - a.spreadHours || SEARCH_AXES.indexOf(a.axis) - SEARCH_AXES.indexOf(b.axis),
      );
    }
    const progress = next === 0 ? null : (collected?.progress() ?? null);
    return {
      progress,
      settings: [...settings],
      around: settled ? (progress?.best[0] ?? progress?.closest[0] ?? null) : null,
      isDone: settings.length === SEARCH_AXES.length,
    };
  };
}
