import { LB_PER_PINT } from "@/lib/engineering/moisture";
import type { OptionForecast } from "@/lib/engineering/simulation";

/** Options this close in wet hours count as equally dry. Common practice, no source. */
export const SAME_WITHIN_H = 50;
/** Share of the mild week above the limit from which it is worth a sentence. Common practice, no source. */
const MUCH = 0.5;
/** Below this share of the mild week in which cooling runs there is no call that a setting could change. Common practice, no source. */
const HARDLY_COOLS = 0.25;
/** Degree-hours beside the setpoint from which comfort is worth a sentence. Common practice, no source. */
const WORTH_SAYING_DEGREE_H = 100;
/** From this difference of the rooms' mean temperature it, and not the water, is what makes a house drier, °F. Common practice, no source. */
const WARMER_F = 1;

/**
 * Why an option is advised: beside each other one, when it is wet, what its dehumidifier is for, and how warm it gets.
 *
 * @param holdsTemperature - Whether an option keeps the house as cool as asked; one that does not is dry for the wrong reason.
 */
export function adviceReasons(
  option: OptionForecast,
  others: readonly OptionForecast[],
  humidityLimitPct: number,
  holdsTemperature: (option: OptionForecast) => boolean,
): readonly string[] {
  return [
    ...others.map((other) =>
      holdsTemperature(option) && !holdsTemperature(other) ? tooWarm(option, other) : against(option, other),
    ),
    ...whenWet(option, humidityLimitPct),
    ...withoutDehumidifier(option, others, humidityLimitPct),
    ...comfort(option),
  ];
}

/** An option that lets the house get warm, beside one that does not. */
function tooWarm(option: OptionForecast, other: OptionForecast): string {
  const more = other.ranges.hoursAboveLimit.central - option.ranges.hoursAboveLimit.central;
  const wet =
    Math.abs(more) <= SAME_WITHIN_H
      ? "about as many"
      : `${wholeText(Math.abs(more))} ${more > 0 ? "more" : "less"}`;
  return `“${other.name}” leaves ${hoursText(other.ranges.hoursAboveLimit.central)}, ${wet}, but does not hold the temperature: ${degreeHours(other)} than the start of cooling over the year, ${other.ranges.hottestF.central.toFixed(1)} °F at the hottest.`;
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
      : `for ${wholeText(Math.abs(dearer))} kWh ${dearer > 0 ? "more" : "less"}`;
  if (Math.abs(saved) <= SAME_WITHIN_H)
    return `“${other.name}” is as dry, ${hoursText(theirs.central)}; “${option.name}” is so ${cost}.`;
  // Only where nothing holds the temperature: then the coolest is advised, not the driest.
  if (saved < 0)
    return `“${other.name}” leaves ${hoursText(theirs.central)}, ${wholeText(-saved)} less, but is still warmer: ${degreeHours(other)} than the start of cooling over the year.`;
  const overlap =
    mine.high >= theirs.low
      ? " Their ranges overlap, so what is not known of the house matters as much as the choice."
      : " Even the wettest case of the one is drier than the driest of the other.";
  return `“${other.name}” leaves ${hoursText(theirs.central)}, ${wholeText(saved)} more; ${cause(option, other)}, ${cost}.${overlap}`;
}

/** What the drier one does differently, by its largest share. */
function cause(option: OptionForecast, other: OptionForecast): string {
  const warmer = meanRoomF(option) - meanRoomF(other);
  if (warmer >= WARMER_F)
    return `its rooms are ${warmer.toFixed(1)} °F warmer on average, where the same water is a lower relative humidity`;
  const more = (figure: "dehumidifierPints" | "reEvaporatedLb" | "drainedLb"): number =>
    option.ranges[figure].central - other.ranges[figure].central;
  const pints = more("dehumidifierPints");
  const drained = more("drainedLb");
  const run = option.meanRunMin?.central ?? 0;
  const otherRun = other.meanRunMin?.central ?? 0;
  const longer =
    run > otherRun + 1 ? ` in runs of ${wholeText(run)} instead of ${wholeText(otherRun)} min` : "";
  const [largest] = [
    { lb: pints * LB_PER_PINT, words: `the dehumidifier takes out ${wholeText(pints)} pints more` },
    {
      lb: -more("reEvaporatedLb"),
      words: `the coil gives ${wholeText(-more("reEvaporatedLb"))} lb less of its water back to the rooms`,
    },
    { lb: drained, words: `the coil drains ${wholeText(drained)} lb more${longer}` },
    {
      lb: other.central.water.in - option.central.water.in,
      words: `${wholeText(other.central.water.in - option.central.water.in)} lb less water come in`,
    },
  ].toSorted((one, next) => next.lb - one.lb);
  return largest !== undefined && largest.lb >= 1
    ? largest.words
    : "its water is taken out at other times of the year";
}

function meanRoomF({ pictures }: OptionForecast): number {
  const days = pictures.year.meanRoomF;
  return days.reduce((sum, one) => sum + one, 0) / Math.max(1, days.length);
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
      : ran < HARDLY_COOLS * length
        ? "no cooling setting reaches them; a dehumidifier would"
        : "cooling runs and still leaves them; a colder coil may take more, a dehumidifier would";
  return [
    `In the mild wet week ${wet} of ${length} hours are above the limit while cooling runs ${wholeText(ran)} h: ${remedy}.`,
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
    `Mild wet weeks need the dehumidifier: in one of them “${driest.name}” is above the limit ${wet} of ${week.roomRhPct.length} hours while cooling runs ${wholeText(ran)} h; with it, ${above(mine.roomRhPct)}.`,
  ];
}

function comfort(option: OptionForecast): readonly string[] {
  const { coldestInRunF, aboveSetpointDegreeHours, belowSetpointDegreeHours, hottestF } = option.ranges;
  const below = belowSetpointDegreeHours.central;
  return [
    ...(aboveSetpointDegreeHours.central < WORTH_SAYING_DEGREE_H
      ? []
      : [
          `It is ${degreeHours(option)} than the start of cooling over the year, ${hottestF.central.toFixed(1)} °F at the hottest.`,
        ]),
    ...(below < WORTH_SAYING_DEGREE_H
      ? []
      : [
          `Its runs go ${wholeText(below)} degree-hours (°F·h) below the setpoint, down to ${coldestInRunF.central.toFixed(1)} °F.`,
        ]),
  ];
}

function degreeHours({ ranges }: OptionForecast): string {
  return `${wholeText(ranges.aboveSetpointDegreeHours.central)} degree-hours (°F·h) warmer`;
}

export function hoursText(value: number): string {
  return `${wholeText(value)} ${Math.round(value) === 1 ? "hour" : "hours"}`;
}

export function wholeText(value: number): string {
  return Math.round(value).toLocaleString("en-US");
}
