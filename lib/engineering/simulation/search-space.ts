import { ImpossibleStateError } from "../errors";
import { requireRange } from "../units";
import type { Weather } from "../weather";
import type { HouseModel, VentilationModel } from "./house";
import { simulateYear } from "./simulate-year";
import type { DehumidifierModel, SystemModel, YearControls } from "./system";

/** One choice of one setting. `effort` says what it takes to bring about, in whatever measure the caller keeps, 0 to 1,000. */
export type SearchChoice = { readonly name: string; readonly effort: number };

/** What may be chosen. */
export type SearchSpace = {
  readonly capacity: readonly SearchChoice[];
  readonly airflow: readonly SearchChoice[];
  /** By capacity, then airflow; `null` where the two do not go together. */
  readonly systems: readonly (readonly (SystemModel | null)[])[];
  readonly controls: readonly (SearchChoice & { readonly value: YearControls })[];
  readonly ventilation: readonly (SearchChoice & { readonly value: VentilationModel })[];
  readonly dehumidifier: readonly (SearchChoice & { readonly value: DehumidifierModel | null })[];
};

export const SEARCH_AXES = ["capacity", "airflow", "controls", "ventilation", "dehumidifier"] as const;
export type SearchAxis = (typeof SEARCH_AXES)[number];
/** One choice an axis, by its place. */
export type SearchPlace = { readonly [K in SearchAxis]: number };

export type SearchInput = {
  readonly house: HouseModel;
  readonly weather: Weather;
  /** 30 to 90 %. */
  readonly humidityLimitPct: number;
  /** Hours above the limit that the promise leaves, 0 to 8,784. */
  readonly mostHoursAboveLimit: number;
  /** Degree-hours over the temperature at which cooling starts that comfort leaves, 0 to 100,000 °F·h. */
  readonly mostAboveSetpointDegreeHours: number;
  readonly space: SearchSpace;
};

/** What a combination gives. */
export type SearchFound = {
  readonly place: SearchPlace;
  readonly names: { readonly [K in SearchAxis]: string };
  readonly effort: number;
  readonly keepsPromise: boolean;
  readonly hoursAboveLimit: number;
  readonly aboveSetpointDegreeHours: number;
  readonly kwh: number;
};

const MOST_COMBINATIONS = 5_000;

/**
 * Every combination of a space whose capacity and airflow go together, least effort first; equal ones in the order of their choices.
 *
 * @param input - Ranges at {@link SearchInput}; at least one choice an axis, at most 5,000 combinations.
 * @returns Places.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} naming the field.
 * @see Definition (computed).
 */
export function combinations(input: SearchInput): readonly SearchPlace[] {
  const { space } = input;
  requireRange("mostHoursAboveLimit", input.mostHoursAboveLimit, "h", 0, 8_784);
  requireRange("mostAboveSetpointDegreeHours", input.mostAboveSetpointDegreeHours, "°F·h", 0, 1e5);
  for (const axis of SEARCH_AXES) {
    requireRange(`space.${axis}`, space[axis].length, "choices", 1, 50);
    for (const one of space[axis]) requireRange(`space.${axis}.effort`, one.effort, "", 0, 1_000);
  }
  const count = SEARCH_AXES.reduce((product, axis) => product * space[axis].length, 1);
  requireRange("combinations", count, "", 1, MOST_COMBINATIONS);
  const places = SEARCH_AXES.reduce<readonly Partial<SearchPlace>[]>(
    (found, axis) => found.flatMap((place) => space[axis].map((_, index) => ({ ...place, [axis]: index }))),
    [{}],
  ) as readonly SearchPlace[];
  const possible = places.filter((place) => systemAt(space, place) !== null);
  if (possible.length === 0) {
    throw new ImpossibleStateError("No capacity goes with any airflow; give at least one system.", [
      "space.systems",
    ]);
  }
  return [...possible].sort((a, b) => effortOf(space, a) - effortOf(space, b));
}

function systemAt(space: SearchSpace, place: SearchPlace): SystemModel | null {
  return space.systems[place.capacity]?.[place.airflow] ?? null;
}

/**
 * What a combination takes to bring about.
 *
 * @param space - Efforts 0 to 1,000.
 * @param place - Places from 0.
 * @returns Sum of the efforts, in the caller's measure.
 * @see Sum (computed).
 */
export function effortOf(space: SearchSpace, place: SearchPlace): number {
  return SEARCH_AXES.reduce((sum, axis) => sum + (space[axis][place[axis]]?.effort ?? 0), 0);
}

/**
 * Runs the year of one combination.
 *
 * @param input - Ranges at {@link SearchInput}.
 * @param place - From {@link combinations}: places from 0.
 * @returns What it gives; h, °F·h, kWh.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} as `simulateYear`, or for a place that is none.
 * @see `simulateYear` (physics).
 */
export function tryCombination(input: SearchInput, place: SearchPlace): SearchFound {
  const { space, house, weather, humidityLimitPct } = input;
  const system = systemAt(space, place);
  const controls = space.controls[place.controls];
  const ventilation = space.ventilation[place.ventilation];
  const dehumidifier = space.dehumidifier[place.dehumidifier];
  if (system === null || controls === undefined || ventilation === undefined || dehumidifier === undefined) {
    throw new ImpossibleStateError("There is no such combination of settings.", ["place"]);
  }
  const year = simulateYear({
    house,
    system,
    controls: controls.value,
    ventilation: ventilation.value,
    dehumidifier: dehumidifier.value,
    weather,
    humidityLimitPct,
  });
  return {
    place,
    names: Object.fromEntries(
      SEARCH_AXES.map((axis) => [axis, space[axis][place[axis]]?.name ?? ""]),
    ) as SearchFound["names"],
    effort: effortOf(space, place),
    keepsPromise:
      year.hoursAboveLimit <= input.mostHoursAboveLimit &&
      year.aboveSetpointDegreeHours <= input.mostAboveSetpointDegreeHours,
    hoursAboveLimit: year.hoursAboveLimit,
    aboveSetpointDegreeHours: year.aboveSetpointDegreeHours,
    kwh: year.compressorKwh + year.fanKwh + year.auxiliaryKwh + year.dehumidifierKwh,
  };
}
