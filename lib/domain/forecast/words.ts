import type { OptionForecast } from "@/lib/engineering/simulation";

export const MONTH_NAMES = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
] as const;
const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** Day and month of an hour of a year without a leap day. */
export function dayOfYearText(hourOfYear: number): string {
  let day = Math.floor(hourOfYear / 24);
  for (const [month, length] of DAYS.entries()) {
    if (day < length) return `${day + 1} ${MONTH_NAMES[month]?.slice(0, 3)}`;
    day -= length;
  }
  return "31 Dec";
}

/** The months with most hours above the limit, wettest first, each with its hours. */
export function wettestMonths(option: OptionForecast, count: number): readonly string[] {
  return option.hoursAboveLimitByMonth
    .map((range, month) => ({ hours: range.central, name: MONTH_NAMES[month] ?? "" }))
    .filter(({ hours }) => hours >= 1)
    .sort((one, other) => other.hours - one.hours)
    .slice(0, count)
    .map(({ hours, name }) => `${name.slice(0, 3)} ${Math.round(hours)} h`);
}

/** Share of the year's hours in bands of humidity, with the house as assumed. */
export function humidityShares(
  option: OptionForecast,
): readonly { readonly band: string; readonly pct: number }[] {
  const hours = option.central.humidityHours;
  const all = hours.reduce((sum, one) => sum + one, 0);
  const between = (from: number, to: number) =>
    (100 * hours.slice(from, to).reduce((sum, one) => sum + one, 0)) / Math.max(all, 1);
  return [
    { band: "below 50 %", pct: between(0, 50) },
    { band: "50 to 55 %", pct: between(50, 55) },
    { band: "55 to 60 %", pct: between(55, 60) },
    { band: "60 to 65 %", pct: between(60, 65) },
    { band: "65 % and more", pct: between(65, 101) },
  ];
}

/** Share of the runs that are shorter than a number of minutes; `null` without a run. */
export function shortRunsPct(option: OptionForecast, minutes: number): number | null {
  const runs = option.central.runsByMinute;
  const all = runs.reduce((sum, one) => sum + one, 0);
  return all === 0 ? null : (100 * runs.slice(0, minutes).reduce((sum, one) => sum + one, 0)) / all;
}

/** When each stage ran, from what ran in every minute. */
export function stageRuns(stages: readonly number[]): readonly {
  readonly fromMin: number;
  readonly toMin: number;
  readonly stage: "first stage" | "second stage";
}[] {
  const starts = stages.flatMap((stage, minute) => (stage !== (stages[minute - 1] ?? 0) ? [minute] : []));
  return starts.flatMap((fromMin, place) => {
    const stage = stages[fromMin] ?? 0;
    const toMin = starts[place + 1] ?? stages.length;
    return stage === 0
      ? []
      : [{ fromMin, toMin, stage: stage === 1 ? ("first stage" as const) : ("second stage" as const) }];
  });
}
