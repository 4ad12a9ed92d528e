import type { Forecast, ForecastRange, OptionForecast } from "@/lib/engineering/simulation";

/** What a forecast comes down to, in sentences someone can act on. */
export type ForecastAdvice = {
  /** Place of the option advised; `null` before any has run. */
  readonly option: number | null;
  readonly advice: string;
  /** Why, the weightiest first. */
  readonly reasons: readonly string[];
};

/** Options this close in wet hours count as equally dry. Common practice, no source. */
const SAME_WITHIN_H = 50;
/** Share of the mild week above the limit from which it is worth a sentence. Common practice, no source. */
const MUCH = 0.5;

/**
 * The option to take and why: the fewest hours above the limit with the house as assumed; among equally dry ones, the least electricity.
 *
 * @param forecast - From `gatherForecast`; may still be running.
 * @param humidityLimitPct - The limit the forecast ran with.
 */
export function forecastAdvice(forecast: Forecast, humidityLimitPct: number): ForecastAdvice {
  const ran = forecast.options.flatMap((option, place) => (option === null ? [] : [{ option, place }]));
  const driest = Math.min(...ran.map(({ option }) => option.ranges.hoursAboveLimit.central));
  const best = ran
    .filter(({ option }) => option.ranges.hoursAboveLimit.central <= driest + SAME_WITHIN_H)
    .reduce<(typeof ran)[number] | null>(
      (least, one) => (least === null || one.option.kwh.central < least.option.kwh.central ? one : least),
      null,
    );
  if (best === null) return { option: null, advice: "No year has been run yet.", reasons: [] };
  const { option } = best;
  const above = option.ranges.hoursAboveLimit;
  const unfinished = forecast.yearsDone < forecast.years ? " So far; not all years have been run." : "";
  const others = ran.filter((one) => one.place !== best.place).map((one) => one.option);
  return {
    option: best.place,
    advice: `Take “${option.name}”: about ${hours(above.central)} of the year above ${humidityLimitPct} %, ${spread(above)} for the houses and years it may meet.${unfinished}`,
    reasons: [
      ...others.map((other) => against(option, other)),
      ...whenWet(option, humidityLimitPct),
      ...withoutDehumidifier(option, others, humidityLimitPct),
      ...comfort(option),
    ],
  };
}

/** The option beside another: wet hours, and what goes with them. */
function against(option: OptionForecast, other: OptionForecast): string {
  const mine = option.ranges.hoursAboveLimit;
  const theirs = other.ranges.hoursAboveLimit;
  const saved = theirs.central - mine.central;
  const dearer = option.kwh.central - other.kwh.central;
  const cost =
    Math.abs(dearer) < 50
      ? "at about the same electricity"
      : `for ${number(Math.abs(dearer))} kWh ${dearer > 0 ? "more" : "less"}`;
  if (Math.abs(saved) <= SAME_WITHIN_H)
    return `“${other.name}” is as dry, ${hours(theirs.central)}; “${option.name}” is so ${cost}.`;
  const overlap =
    mine.high >= theirs.low
      ? " Their ranges overlap, so what is not known of the house matters as much as the choice."
      : " Even the wettest case of the one is drier than the driest of the other.";
  return `“${other.name}” leaves ${hours(theirs.central)}, ${number(saved)} more; ${cause(option, other)}, ${cost}.${overlap}`;
}

/** What the drier one does differently, by its largest share. */
function cause(option: OptionForecast, other: OptionForecast): string {
  const { ranges } = option;
  const pints = ranges.dehumidifierPints.central - other.ranges.dehumidifierPints.central;
  if (pints > 0) return `the dehumidifier takes out ${number(pints)} pints more`;
  const dried = other.ranges.reEvaporatedLb.central - ranges.reEvaporatedLb.central;
  const drained = ranges.drainedLb.central - other.ranges.drainedLb.central;
  if (dried > Math.max(drained, 0))
    return `the coil gives ${number(dried)} lb less of its water back to the rooms`;
  const run = option.meanRunMin?.central ?? 0;
  const otherRun = other.meanRunMin?.central ?? 0;
  const longer = run > otherRun + 1 ? ` in runs of ${number(run)} instead of ${number(otherRun)} min` : "";
  if (drained > 0) return `the coil drains ${number(drained)} lb more${longer}`;
  return "it keeps more of the outdoor water out";
}

/** Whether the wet hours left come when there is no call for cooling. */
function whenWet(option: OptionForecast, humidityLimitPct: number): readonly string[] {
  const { central, pictures } = option;
  const { mildWetWeek } = pictures;
  if (central.hoursAboveLimit < SAME_WITHIN_H || mildWetWeek === null) return [];
  const length = mildWetWeek.roomRhPct.length;
  const wet = mildWetWeek.roomRhPct.filter((pct) => pct > humidityLimitPct).length;
  const ran = mildWetWeek.runMinutes.reduce((sum, one) => sum + one, 0) / 60;
  if (wet < MUCH * length) return [];
  const remedy =
    option.ranges.dehumidifierPints.central > 0
      ? "a larger dehumidifier, or a lower start of it, would help where cooling cannot"
      : "no cooling setting reaches them; a dehumidifier would";
  return [
    `In the mild wet week ${wet} of ${length} hours are above the limit while cooling runs ${number(ran)} h: ${remedy}.`,
  ];
}

/** What the dehumidifier of the option advised is for: the mild wet week of the driest option that has none. */
function withoutDehumidifier(
  option: OptionForecast,
  others: readonly OptionForecast[],
  humidityLimitPct: number,
): readonly string[] {
  if (option.ranges.dehumidifierPints.central === 0) return [];
  const [driest] = others
    .filter((one) => one.ranges.dehumidifierPints.central === 0)
    .toSorted((one, other) => one.ranges.hoursAboveLimit.central - other.ranges.hoursAboveLimit.central);
  const week = driest?.pictures.mildWetWeek ?? null;
  const mine = option.pictures.mildWetWeek;
  if (driest === undefined || week === null || mine === null) return [];
  const above = (hours: readonly number[]) => hours.filter((pct) => pct > humidityLimitPct).length;
  const wet = above(week.roomRhPct);
  if (wet < MUCH * week.roomRhPct.length) return [];
  const ran = week.runMinutes.reduce((sum, one) => sum + one, 0) / 60;
  return [
    `Mild wet weeks need the dehumidifier: in one of them “${driest.name}” is above the limit ${wet} of ${week.roomRhPct.length} hours while cooling runs ${number(ran)} h; with it, ${above(mine.roomRhPct)}.`,
  ];
}

function comfort(option: OptionForecast): readonly string[] {
  const { coldestInRunF, aboveSetpointDegreeHours } = option.ranges;
  const hot = aboveSetpointDegreeHours.central;
  return hot < 100
    ? []
    : [
        `It is ${number(hot)} degree-hours warmer than the thermostat asks over the year, and never colder in a run than ${coldestInRunF.central.toFixed(1)} °F.`,
      ];
}

function spread({ low, high }: ForecastRange): string {
  return high - low < 1 ? "the same" : `${number(low)} to ${hours(high)}`;
}

function hours(value: number): string {
  return `${number(value)} hours`;
}

function number(value: number): string {
  return Math.round(value).toLocaleString("en-US");
}
