import { ImpossibleStateError } from "../errors";
import { requireRange } from "../units";
import type { Weather } from "../weather";
import { type ForecastHouse, type HouseMembers, houseMembers } from "./house-members";
import { type ForecastOption, type MemberYear, memberYear } from "./member-year";
import { type TypicalHours, typicalHours } from "./year-pictures";

/** Everything a forecast follows from. */
export type ForecastInput = {
  readonly house: ForecastHouse;
  readonly weather: Weather;
  /** 1 to 12; names differ. */
  readonly options: readonly ForecastOption[];
  /** 30 to 90 %. */
  readonly humidityLimitPct: number;
  /** Houses and years to run each option through, the central one among them, 1 to 100. */
  readonly members: number;
  /** 0 to 4,294,967,295. */
  readonly seed: number;
};

/** A forecast ready to run: its members, the hours to draw, how many years there are to run. */
export type PreparedForecast = {
  readonly input: ForecastInput;
  readonly ensemble: HouseMembers;
  readonly hours: TypicalHours;
  readonly years: number;
};

/**
 * Checks a forecast and draws its members.
 *
 * @param input - Ranges at {@link ForecastInput}.
 * @returns What {@link forecastYears} runs.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} naming the field.
 * @see `houseMembers` (computed).
 */
export function prepareForecast(input: ForecastInput): PreparedForecast {
  const { options, members } = input;
  requireRange("number of options", options.length, "", 1, 12);
  if (new Set(options.map((one) => one.name)).size !== options.length) {
    throw new ImpossibleStateError("Two options have the same name; give each its own.", ["options"]);
  }
  requireRange("humidityLimitPct", input.humidityLimitPct, "%", 30, 90);
  if (!Number.isInteger(members))
    throw new ImpossibleStateError("members has to be a whole number.", ["members"]);
  return {
    input,
    ensemble: houseMembers(input.house, input.weather, members, input.seed),
    hours: typicalHours(input.weather),
    years: options.length * members,
  };
}

/**
 * Runs a forecast's years one after the other: first every option with the central house, so that the first numbers are there after one
 * year, then the other members. Whoever calls may stop between two years, and shares the work by taking every nth year.
 *
 * @param prepared - From {@link prepareForecast}.
 * @param share - Years `index`, `index + of`, …: `of` 1 to 64, `index` 0 to `of` − 1, whole numbers.
 * @returns A generator of one result a year.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} when the central house cannot be run with an option.
 * @see `simulateYear` (physics).
 */
export function* forecastYears(
  { input, ensemble, hours, years }: PreparedForecast,
  share: { readonly index: number; readonly of: number } = { index: 0, of: 1 },
): Generator<MemberYear, void, void> {
  requireRange("share.of", share.of, "", 1, 64);
  requireRange("share.index", share.index, "", 0, share.of - 1);
  if (!Number.isInteger(share.of) || !Number.isInteger(share.index)) {
    throw new ImpossibleStateError("share.of and share.index have to be whole numbers.", ["share"]);
  }
  const count = input.options.length;
  for (let year = share.index; year < years; year += share.of) {
    const option = input.options[year % count];
    const member = ensemble.members[Math.floor(year / count)];
    if (option === undefined || member === undefined) return;
    yield memberYear(option, { option: year % count, hours }, member, input.weather, input.humidityLimitPct);
  }
}
