import { isEngineeringError } from "../errors";
import type { Weather } from "../weather";
import type { VentilationModel } from "./house";
import { type HouseMember, memberWeather } from "./house-members";
import { simulateYear } from "./simulate-year";
import type { DehumidifierModel, SystemModel, YearControls } from "./system";
import { type TypicalHours, type YearPictures, yearPictures } from "./year-pictures";
import type { YearResult } from "./year-result";

/** One way to build and set the system. */
export type ForecastOption = {
  readonly name: string;
  readonly system: SystemModel;
  readonly controls: YearControls;
  readonly ventilation: VentilationModel;
  readonly dehumidifier: DehumidifierModel | null;
};

/** A year's account without its hours: plain numbers and lists, small enough to send and to store. */
export type YearFigures = Omit<YearResult, "hourF" | "hourRhPct" | "hourRunMinutes" | "trace">;

/** One option through one member's year. */
export type MemberYear = {
  readonly option: number;
  readonly member: number;
  /** `null` when the year could not be run; `problem` then says why. */
  readonly figures: YearFigures | null;
  /** Only of the central member. */
  readonly pictures: YearPictures | null;
  readonly problem: string | null;
};

/**
 * Runs one option through one member's year.
 *
 * @param option - Ranges at `YearInput`.
 * @param place - The option's number, from 0, and the hours to draw, from `typicalHours`.
 * @param member - From `houseMembers`.
 * @param weather - The job's year, before the member's shift.
 * @param humidityLimitPct - 30 to 90 %.
 * @returns The figures, or why there are none. The central member's refusals are thrown.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} as `simulateYear`, for the central member.
 * @see `simulateYear` (physics).
 */
export function memberYear(
  option: ForecastOption,
  place: { readonly option: number; readonly hours: TypicalHours },
  member: HouseMember,
  weather: Weather,
  humidityLimitPct: number,
): MemberYear {
  const said = { option: place.option, member: member.index };
  const central = member.index === 0;
  if (member.house === null) return { ...said, figures: null, pictures: null, problem: member.problem };
  const { system, controls, ventilation, dehumidifier } = option;
  const trace = central ? { trace: { firstHour: place.hours.hotDayFirstHour, hours: 24 } } : {};
  try {
    const year = simulateYear({
      house: member.house,
      system,
      controls,
      ventilation,
      dehumidifier,
      humidityLimitPct,
      weather: memberWeather(member, weather),
      ...trace,
    });
    const { hourF: _f, hourRhPct: _rh, hourRunMinutes: _run, trace: _trace, ...figures } = year;
    return {
      ...said,
      figures,
      pictures: central ? yearPictures(year, weather, place.hours) : null,
      problem: null,
    };
  } catch (error) {
    if (central || !isEngineeringError(error)) throw error;
    return { ...said, figures: null, pictures: null, problem: error.message };
  }
}
