import type { Forecast, ForecastRange, OptionForecast } from "@/lib/engineering/simulation";
import { adviceReasons, hoursText, SAME_WITHIN_H, wholeText } from "./advice-reasons";

/** What a forecast comes down to, in sentences someone can act on. */
export type ForecastAdvice = {
  /** Place of the option advised; `null` before any has run. */
  readonly option: number | null;
  readonly advice: string;
  /** Why, the weightiest first. */
  readonly reasons: readonly string[];
};

/** What is asked of a year. */
export type ForecastPromise = {
  /** The limit the forecast ran with. */
  readonly humidityLimitPct: number;
  /** Share of the hours to lie at or below it, as the company promises. */
  readonly dryShareMinPct: number;
};

/** Degree-hours above the start of cooling that comfort leaves in a year: a degree for twenty days. Common practice, no source. */
export const MOST_DEGREE_HOURS = 500;

type Ran = { readonly option: OptionForecast; readonly place: number };

/**
 * The option to take and why. Those that hold the temperature come first, among them those that keep the promise, among them the fewest
 * hours above the limit with the house as assumed, and among equally dry ones the least electricity.
 *
 * @param forecast - From `gatherForecast`; may still be running.
 */
export function forecastAdvice(forecast: Forecast, promise: ForecastPromise): ForecastAdvice {
  const ran = forecast.options.flatMap((option, place) => (option === null ? [] : [{ option, place }]));
  const cooled = ran.filter(({ option }) => holdsTemperature(option));
  const keepers = cooled.filter(({ option }) => keepsPromise(option, promise));
  const [best] = keepers.length > 0 ? driest(keepers) : cooled.length > 0 ? driest(cooled) : coolest(ran);
  if (best === undefined) return { option: null, advice: "No year has been run yet.", reasons: [] };
  const { option, place } = best;
  const above = option.ranges.hoursAboveLimit;
  const unfinished = forecast.yearsDone < forecast.years ? " So far; not all years have been run." : "";
  const others = ran.filter((one) => one.place !== place).map((one) => one.option);
  return {
    option: place,
    advice: `${opening(best, { ran, cooled, keepers }, promise)} about ${hoursText(above.central)} of the year above ${promise.humidityLimitPct} %, ${spread(above)} for the houses and years it may meet.${unfinished}`,
    reasons: adviceReasons(option, others, promise.humidityLimitPct, holdsTemperature),
  };
}

function opening(
  { option }: Ran,
  { ran, cooled, keepers }: Readonly<Record<"ran" | "cooled" | "keepers", readonly Ran[]>>,
  { humidityLimitPct, dryShareMinPct }: ForecastPromise,
): string {
  if (keepers.length > 0) return `Take “${option.name}”:`;
  const missed =
    cooled.length > 0
      ? `the house at or below ${humidityLimitPct} % for ${dryShareMinPct} % of the year`
      : "the house as cool as asked";
  return ran.length === 1
    ? `“${option.name}” does not keep ${missed}:`
    : `None of these keeps ${missed}. “${option.name}” comes nearest:`;
}

function holdsTemperature({ ranges }: OptionForecast): boolean {
  return ranges.aboveSetpointDegreeHours.central <= MOST_DEGREE_HOURS;
}

function keepsPromise({ ranges }: OptionForecast, { dryShareMinPct }: ForecastPromise): boolean {
  const dry = ranges.dryHours.central;
  return 100 * dry >= dryShareMinPct * (dry + ranges.hoursAboveLimit.central);
}

/** Equally dry ones count as one; of them the least electricity comes first. */
function driest(from: readonly Ran[]): readonly Ran[] {
  const least = Math.min(...from.map(({ option }) => option.ranges.hoursAboveLimit.central));
  return from
    .filter(({ option }) => option.ranges.hoursAboveLimit.central <= least + SAME_WITHIN_H)
    .toSorted((one, other) => one.option.kwh.central - other.option.kwh.central);
}

function coolest(from: readonly Ran[]): readonly Ran[] {
  const warm = ({ option }: Ran) => option.ranges.aboveSetpointDegreeHours.central;
  return from.toSorted((one, other) => warm(one) - warm(other));
}

function spread({ low, high }: ForecastRange): string {
  return high - low < 1 ? "the same" : `${wholeText(low)} to ${hoursText(high)}`;
}
