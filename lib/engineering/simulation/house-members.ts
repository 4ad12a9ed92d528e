import { isEngineeringError } from "../errors";
import { requireRange } from "../units";
import type { Weather } from "../weather";
import { type HouseModel, requireHouse } from "./house";
import type { AssumptionName, HouseAssumption } from "./house-assumptions";
import { houseFromLoadSummary, type LoadForHouse } from "./house-from-load-summary";
import { seededDraws } from "./seeded-draws";
import { shiftWeather, type WeatherShift } from "./weather-shift";

/** A number nobody knows exactly: where it is put, and between what it may lie. */
export type UncertainNumber = {
  readonly name: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly unit: string;
  readonly why: string;
};

/** Where a forecast's house comes from. */
export type ForecastHouse =
  | {
      readonly kind: "load summary";
      readonly load: LoadForHouse;
      /** What someone set otherwise: from then on it counts as known. */
      readonly changed: Partial<Readonly<Record<AssumptionName, number>>>;
    }
  /** A house as it is, without ranges of its own; only the weather is uncertain. */
  | { readonly kind: "given"; readonly house: HouseModel }
  /** A house fitted to a log: its own uncertain numbers, each turned into a house by its factors. */
  | {
      readonly kind: "fitted";
      readonly factors: readonly UncertainNumber[];
      readonly houseAt: (factors: Readonly<Record<string, number>>) => HouseModel;
    };

/** One way the house and its year may truly be. */
export type HouseMember = {
  /** 0 is the central one: every number where it is put. */
  readonly index: number;
  /** The uncertain numbers of this member, in the order of `HouseMembers.uncertain`. */
  readonly values: readonly number[];
  readonly shift: WeatherShift;
  /** `null` where these numbers contradict the load summary; `problem` then says how. */
  readonly house: HouseModel | null;
  readonly problem: string | null;
};

export type HouseMembers = {
  readonly members: readonly HouseMember[];
  readonly uncertain: readonly UncertainNumber[];
  /** Everything assumed about the house, the certain too; empty for a given or fitted house. */
  readonly assumptions: readonly HouseAssumption[];
};

/** How far a real year stands off the typical one (from memory, unverified). */
const YEAR_SPREAD = { dryBulbF: 1.5, dewPointF: 2 };
const OTHER_YEAR = "one year against the typical one (from memory, unverified)";
const WEATHER_NUMBERS: readonly UncertainNumber[] = [
  {
    name: "yearWarmerByF",
    value: 0,
    low: -YEAR_SPREAD.dryBulbF,
    high: YEAR_SPREAD.dryBulbF,
    unit: "Δ°F",
    why: OTHER_YEAR,
  },
  {
    name: "yearDewPointHigherByF",
    value: 0,
    low: -YEAR_SPREAD.dewPointF,
    high: YEAR_SPREAD.dewPointF,
    unit: "Δ°F",
    why: OTHER_YEAR,
  },
];

/**
 * An ensemble of houses and years: the central one, then draws over every number that is uncertain. Half of each number's draws lie
 * below the value it is put at, half above.
 *
 * @param house - Where the house comes from; ranges at `houseFromLoadSummary`.
 * @param weather - The job's year, without gaps.
 * @param count - Members, 1 to 100.
 * @param seed - 0 to 4,294,967,295; the same seed gives the same members.
 * @returns The members; one whose numbers contradict the load summary holds no house but says why.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} when the central house is refused.
 * @see Ranges at `houseAssumptions`; Latin hypercube sampling (recalled).
 */
export function houseMembers(
  house: ForecastHouse,
  weather: Weather,
  count: number,
  seed: number,
): HouseMembers {
  requireRange("members", count, "", 1, 100);
  requireRange("seed", seed, "", 0, 4_294_967_295);
  const assumptions =
    house.kind === "load summary" ? houseFromLoadSummary(house.load, weather, house.changed).assumptions : [];
  const ofHouse: readonly UncertainNumber[] =
    house.kind === "load summary"
      ? assumptions.filter((one) => one.low < one.high && house.changed[one.name] === undefined)
      : house.kind === "fitted"
        ? house.factors
        : [];
  const uncertain = [...ofHouse, ...WEATHER_NUMBERS];
  const central = uncertain.map((one) => one.value);
  const drawn = seededDraws(seed, count - 1, uncertain.length).map((shares) =>
    uncertain.map((one, index) => between(one, shares[index] ?? 0.5)),
  );
  const members = [central, ...drawn].map((values, index) =>
    memberOf(house, weather, ofHouse, values, index),
  );
  return { members, uncertain, assumptions };
}

/** The lower half of the draws lies evenly from `low` to the value, the upper half from there to `high`. */
function between({ low, value, high }: UncertainNumber, share: number): number {
  return share < 0.5 ? low + 2 * share * (value - low) : value + (2 * share - 1) * (high - value);
}

function memberOf(
  house: ForecastHouse,
  weather: Weather,
  ofHouse: readonly UncertainNumber[],
  values: readonly number[],
  index: number,
): HouseMember {
  const shift = { dryBulbByF: values[ofHouse.length] ?? 0, dewPointByF: values[ofHouse.length + 1] ?? 0 };
  const named = Object.fromEntries(ofHouse.map((one, place) => [one.name, values[place] ?? one.value]));
  try {
    return { index, values, shift, house: houseOf(house, weather, named), problem: null };
  } catch (error) {
    if (index === 0 || !isEngineeringError(error)) throw error;
    return { index, values, shift, house: null, problem: error.message };
  }
}

function houseOf(
  house: ForecastHouse,
  weather: Weather,
  values: Readonly<Record<string, number>>,
): HouseModel {
  const found =
    house.kind === "given"
      ? house.house
      : house.kind === "fitted"
        ? house.houseAt(values)
        : houseFromLoadSummary(house.load, weather, { ...house.changed, ...values }).house;
  requireHouse(found);
  return found;
}

/**
 * The year as this member has it.
 *
 * @param member - From {@link houseMembers}.
 * @param weather - The job's year.
 * @returns Weather, shifted.
 * @throws {@link OutOfRangeError} as `shiftWeather`.
 * @see `shiftWeather` (recalled).
 */
export function memberWeather(member: HouseMember, weather: Weather): Weather {
  return shiftWeather(weather, member.shift);
}
