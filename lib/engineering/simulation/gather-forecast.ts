import type { ForecastInput } from "./forecast";
import type { MemberYear, YearFigures } from "./member-year";
import type { YearPictures } from "./year-pictures";

/** A number as the ensemble has it: with the central house, and its least and most over all members run so far. */
export type ForecastRange = { readonly central: number; readonly low: number; readonly high: number };

/** What a year of one option is like. */
export type OptionForecast = {
  readonly name: string;
  /** Members run, and those that could not be, with the reason. */
  readonly membersRun: number;
  readonly refused: readonly { readonly member: number; readonly problem: string }[];
  /** The central member's whole account. */
  readonly central: YearFigures;
  readonly pictures: YearPictures;
  readonly ranges: { readonly [K in RangedFigure]: ForecastRange };
  /** January first. */
  readonly hoursAboveLimitByMonth: readonly ForecastRange[];
  readonly coolingHoursByMonth: readonly ForecastRange[];
  /** `null` in a month the weather leaves out. */
  readonly meanRhPctByMonth: readonly (ForecastRange | null)[];
  readonly worstWeekHours: ForecastRange;
  /** Second stage over all cooling hours; `null` where no member cooled. */
  readonly secondStageShare: ForecastRange | null;
  readonly meanRunMin: ForecastRange | null;
  /** Compressor, fan, auxiliary heat and dehumidifier. Winter's heat-pump electricity is left out. */
  readonly kwh: ForecastRange;
  /** Largest share by which heat or water of any member's year does not close. */
  readonly balanceError: number;
};

/** Of a prepared forecast what gathering needs: the options' names, and how many years there are to run. */
export type ForecastToGather = {
  readonly input: Pick<ForecastInput, "options">;
  readonly years: number;
};

/** The figures given as ranges. */
export const RANGED_FIGURES = [
  "dryHours",
  "hoursAboveLimit",
  "starts",
  "firstStageHours",
  "secondStageHours",
  "frostLimitHours",
  "drainedLb",
  "reEvaporatedLb",
  "condensedOnSurfacesLb",
  "compressorKwh",
  "fanKwh",
  "auxiliaryKwh",
  "dehumidifierKwh",
  "dehumidifierHours",
  "dehumidifierPints",
  "belowSetpointDegreeHours",
  "aboveSetpointDegreeHours",
  "hottestF",
  "coldestInRunF",
] as const satisfies readonly (keyof YearFigures)[];
export type RangedFigure = (typeof RANGED_FIGURES)[number];

export type Forecast = {
  /** In the order of the options; an option whose central year has not run yet is `null`. */
  readonly options: readonly (OptionForecast | null)[];
  readonly yearsDone: number;
  readonly years: number;
};

/**
 * Puts the years that have run together. Cheap enough to call after every year; the order in which they ran does not matter.
 *
 * @param prepared - From `prepareForecast`; of a worker's, its options and number of years.
 * @param years - What `forecastYears` has given so far.
 * @returns The forecast so far; hours, lb, kWh, pints, °F as the figures' names say.
 * @see Least and most over the members (computed).
 */
export function gatherForecast(prepared: ForecastToGather, years: readonly MemberYear[]): Forecast {
  return {
    options: prepared.input.options.map((option, index) =>
      gatherOption(
        option.name,
        years.filter((year) => year.option === index).sort((a, b) => a.member - b.member),
      ),
    ),
    yearsDone: years.length,
    years: prepared.years,
  };
}

function gatherOption(name: string, years: readonly MemberYear[]): OptionForecast | null {
  const first = years[0];
  if (first === undefined || first.member !== 0 || first.figures === null || first.pictures === null)
    return null;
  const ran = years.flatMap(({ figures }) => (figures === null ? [] : [figures]));
  const rangeOf = (figure: (year: YearFigures) => number): ForecastRange => range(ran.map(figure));
  const months = (figure: (year: YearFigures, month: number) => number): readonly ForecastRange[] =>
    Array.from({ length: 12 }, (_, month) => rangeOf((year) => figure(year, month)));
  return {
    name,
    membersRun: ran.length,
    refused: years.flatMap(({ member, problem }) => (problem === null ? [] : [{ member, problem }])),
    central: first.figures,
    pictures: first.pictures,
    ranges: Object.fromEntries(
      RANGED_FIGURES.map((figure) => [figure, rangeOf((year) => year[figure])]),
    ) as OptionForecast["ranges"],
    hoursAboveLimitByMonth: months((year, month) => year.hoursAboveLimitByMonth[month] ?? 0),
    coolingHoursByMonth: months((year, month) => year.coolingHoursByMonth[month] ?? 0),
    meanRhPctByMonth: Array.from({ length: 12 }, (_, month) =>
      rangeWhereKnown(ran.map((year) => year.meanRhPctByMonth[month] ?? null)),
    ),
    worstWeekHours: rangeOf((year) => year.worstWeek?.hoursAboveLimit ?? 0),
    secondStageShare: rangeWhereKnown(ran.map((year) => year.secondStageShare)),
    meanRunMin: rangeWhereKnown(ran.map((year) => year.meanRunMin)),
    kwh: rangeOf((year) => year.compressorKwh + year.fanKwh + year.auxiliaryKwh + year.dehumidifierKwh),
    balanceError: Math.max(
      ...ran.flatMap(({ heat, water }) => [Math.abs(heat.relative), Math.abs(water.relative)]),
    ),
  };
}

/** The first is the central member's. */
function range(values: readonly number[]): ForecastRange {
  return { central: values[0] ?? Number.NaN, low: Math.min(...values), high: Math.max(...values) };
}

/** `null` where the central member has no such number. */
function rangeWhereKnown(values: readonly (number | null)[]): ForecastRange | null {
  return values[0] === null ? null : range(values.filter((value) => value !== null));
}
