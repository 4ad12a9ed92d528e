import { isEngineeringError } from "@/lib/engineering/errors";
import {
  type ForecastHouse,
  houseFromLoadSummary,
  type SearchInput,
  type SearchPlace,
  type SearchProgress,
  type SettingSensitivity,
  searchSettings,
  settingSensitivity,
} from "@/lib/engineering/simulation";

/** A search as it is asked: the house is made where it runs. */
export type SearchOrder = Omit<SearchInput, "house"> & {
  readonly house: Extract<ForecastHouse, { kind: "load summary" }>;
  /** How many to find. */
  readonly keep: number;
};

export type SearchEvent =
  | { readonly kind: "tried"; readonly progress: SearchProgress }
  | { readonly kind: "turned"; readonly settings: readonly SettingSensitivity[] }
  | { readonly kind: "failed"; readonly problem: string }
  | { readonly kind: "done" };

/** Searches, then turns each setting around the best that was found. Stop between two events to cancel. */
export function* searchEvents({ house, keep, ...rest }: SearchOrder): Generator<SearchEvent, void, void> {
  try {
    const made = houseFromLoadSummary(house.load, rest.weather, house.changed).house;
    const input: SearchInput = { ...rest, house: made };
    let last: SearchProgress | null = null;
    for (const progress of searchSettings(input, keep)) {
      last = progress;
      yield { kind: "tried", progress };
    }
    const around: SearchPlace | undefined = (last?.best[0] ?? last?.closest[0])?.place;
    if (around !== undefined)
      for (const settings of settingSensitivity(input, around)) yield { kind: "turned", settings };
    yield { kind: "done" };
  } catch (error) {
    if (!isEngineeringError(error)) throw error;
    yield { kind: "failed", problem: error.message };
  }
}
