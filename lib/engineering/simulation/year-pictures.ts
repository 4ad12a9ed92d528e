import type { Weather } from "../weather";
import type { YearResult } from "./year-result";

/** Hours worth a picture: the hottest day, and a week in which it is wet outdoors but too mild to call for cooling. */
export type TypicalHours = {
  readonly hotDayFirstHour: number;
  /** `null` in weather that has no such week. */
  readonly mildWetWeekFirstHour: number | null;
};

/** Weeks whose mean outdoor temperature lies here count as mild (common practice, no source). */
const MILD_F = { from: 60, to: 74 };
const DAY_H = 24;
const WEEK_H = 168;

/**
 * Which hours to draw: the day with the warmest mean, and, among the weeks with a mean of 60 to 74 °F, that with the highest mean
 * humidity ratio. Weeks begin at midnight.
 *
 * @param weather - At least 24 hours, without gaps.
 * @returns First hours, from 0.
 * @see Definitions; what counts as mild: common practice, no source.
 */
export function typicalHours(weather: Weather): TypicalHours {
  let hotDayFirstHour = 0;
  let hottest = Number.NEGATIVE_INFINITY;
  let mildWetWeekFirstHour: number | null = null;
  let wettest = Number.NEGATIVE_INFINITY;
  for (let first = 0; first + DAY_H <= weather.hourCount; first += DAY_H) {
    const day = meanOver(weather.dryBulbF, first, DAY_H);
    if (day > hottest) {
      hottest = day;
      hotDayFirstHour = first;
    }
    if (first + WEEK_H > weather.hourCount) continue;
    const week = meanOver(weather.dryBulbF, first, WEEK_H);
    const water = meanOver(weather.humidityRatio, first, WEEK_H);
    if (week >= MILD_F.from && week <= MILD_F.to && water > wettest) {
      wettest = water;
      mildWetWeekFirstHour = first;
    }
  }
  return { hotDayFirstHour, mildWetWeekFirstHour };
}

/** One hour after the other: rooms, outdoors, running. */
export type HourSeries = {
  readonly firstHour: number;
  readonly roomF: readonly number[];
  readonly roomRhPct: readonly number[];
  readonly outdoorF: readonly number[];
  /** `null` where the file says nothing. */
  readonly outdoorDewPointF: readonly (number | null)[];
  readonly runMinutes: readonly number[];
};

/** One day after the other. */
export type DaySeries = {
  readonly meanRhPct: readonly number[];
  readonly highestRhPct: readonly number[];
  readonly meanRoomF: readonly number[];
  readonly runHours: readonly number[];
};

/** What there is to draw of one option's central year. */
export type YearPictures = {
  readonly hotDay: HourSeries & {
    /** Minute by minute. */
    readonly minutes: {
      readonly roomF: readonly number[];
      readonly rhPct: readonly number[];
      readonly stage: readonly number[];
    } | null;
  };
  readonly mildWetWeek: HourSeries | null;
  readonly year: DaySeries;
  /** Mean humidity of the rooms by month (0 is January) and hour of the day, 0 to 23. */
  readonly hourByMonth: readonly {
    readonly month: number;
    readonly hour: number;
    readonly meanRhPct: number;
  }[];
};

/**
 * The pictures of a year: one hot day by the minute (when the year was traced over it), one mild wet week by the hour, the year by day.
 *
 * @param year - From `simulateYear`.
 * @param weather - The weather it ran in.
 * @param hours - From {@link typicalHours}.
 * @returns Series; °F, %, min and h as named.
 * @see Means and maxima of the simulated hours (computed).
 */
export function yearPictures(year: YearResult, weather: Weather, hours: TypicalHours): YearPictures {
  const { trace } = year;
  const { mildWetWeekFirstHour: wet } = hours;
  return {
    hotDay: {
      ...hourSeries(year, weather, hours.hotDayFirstHour, DAY_H),
      minutes:
        trace === null
          ? null
          : {
              roomF: Array.from(trace.roomF),
              rhPct: Array.from(trace.rhPct),
              stage: Array.from(trace.stage),
            },
    },
    mildWetWeek: wet === null ? null : hourSeries(year, weather, wet, WEEK_H),
    year: daySeries(year),
    hourByMonth: hoursByMonth(year, weather),
  };
}

function hoursByMonth(year: YearResult, weather: Weather): YearPictures["hourByMonth"] {
  const sums = new Float64Array(12 * DAY_H);
  const counts = new Float64Array(12 * DAY_H);
  for (const [hour, rhPct] of year.hourRhPct.entries()) {
    const place = ((weather.month[hour] ?? 1) - 1) * DAY_H + (hour % DAY_H);
    sums[place] = (sums[place] ?? 0) + rhPct;
    counts[place] = (counts[place] ?? 0) + 1;
  }
  return Array.from(sums, (sum, place) => ({ sum, place, count: counts[place] ?? 0 }))
    .filter(({ count }) => count > 0)
    .map(({ sum, place, count }) => ({
      month: Math.floor(place / DAY_H),
      hour: place % DAY_H,
      meanRhPct: sum / count,
    }));
}

function hourSeries(year: YearResult, weather: Weather, firstHour: number, count: number): HourSeries {
  const cut = (values: Float64Array) => Array.from(values.subarray(firstHour, firstHour + count));
  return {
    firstHour,
    roomF: cut(year.hourF),
    roomRhPct: cut(year.hourRhPct),
    outdoorF: cut(weather.dryBulbF),
    outdoorDewPointF: cut(weather.dewPointF).map((value) => (Number.isNaN(value) ? null : value)),
    runMinutes: cut(year.hourRunMinutes),
  };
}

function daySeries(year: YearResult): DaySeries {
  const days = Array.from({ length: Math.floor(year.hourF.length / DAY_H) }, (_, day) => day * DAY_H);
  const highest = (first: number) => Math.max(...year.hourRhPct.subarray(first, first + DAY_H));
  return {
    meanRhPct: days.map((first) => meanOver(year.hourRhPct, first, DAY_H)),
    highestRhPct: days.map(highest),
    meanRoomF: days.map((first) => meanOver(year.hourF, first, DAY_H)),
    runHours: days.map((first) => (meanOver(year.hourRunMinutes, first, DAY_H) * DAY_H) / 60),
  };
}

function meanOver(values: Float64Array, first: number, count: number): number {
  let sum = 0;
  for (let hour = first; hour < first + count; hour++) sum += values[hour] ?? Number.NaN;
  return sum / count;
}
