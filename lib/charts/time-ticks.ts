import { DateTime, type DurationLike } from "luxon";

type Step = {
  readonly hours: number;
  readonly from: "hour" | "day" | "week" | "month";
  readonly step: DurationLike;
  /** Says only what changes from tick to tick. */
  readonly format: string;
};

/** Steps a reader counts in. */
const STEPS: readonly Step[] = [
  { hours: 0.25, from: "hour", step: { minutes: 15 }, format: "HH:mm" },
  { hours: 1, from: "hour", step: { hours: 1 }, format: "HH:mm" },
  { hours: 3, from: "day", step: { hours: 3 }, format: "HH:mm" },
  { hours: 6, from: "day", step: { hours: 6 }, format: "HH:mm" },
  { hours: 12, from: "day", step: { hours: 12 }, format: "HH:mm" },
  { hours: 24, from: "day", step: { days: 1 }, format: "d LLL" },
  { hours: 48, from: "day", step: { days: 2 }, format: "d LLL" },
  { hours: 168, from: "week", step: { weeks: 1 }, format: "d LLL" },
  { hours: 336, from: "week", step: { weeks: 2 }, format: "d LLL" },
  { hours: 731, from: "month", step: { months: 1 }, format: "LLL" },
  { hours: 2_192, from: "month", step: { months: 3 }, format: "LLL yyyy" },
];

const MS_PER_HOUR = 3_600_000;

export type TimeTick = { readonly atMs: number; readonly text: string };

/**
 * Round times of the house's own clock between two instants, about `count` of them. Midnight shows its date.
 * On days of 23 and 25 hours the ticks stay at the clock's times.
 */
export function timeTicks(
  fromMs: number,
  toMs: number,
  timeZone: string,
  count: number,
): readonly TimeTick[] {
  const spanHours = (toMs - fromMs) / MS_PER_HOUR;
  const step = STEPS.find((candidate) => spanHours / candidate.hours <= count) ?? STEPS.at(-1);
  if (step === undefined) return [];
  const ticks: TimeTick[] = [];
  for (const time of roundTimes(onClock(fromMs, timeZone).startOf(step.from), toMs, step)) {
    if (time.toMillis() >= fromMs) ticks.push({ atMs: time.toMillis(), text: textOf(time, step.format) });
  }
  return ticks;
}

function* roundTimes(start: DateTime, toMs: number, step: Step): Generator<DateTime> {
  const isHoursOfDay = step.from === "day" && step.hours < 24;
  for (let time = start; time.toMillis() <= toMs; ) {
    yield time;
    if (!isHoursOfDay) time = time.plus(step.step);
    // Setting the clock's hour, rather than adding hours, keeps to the clock on the day it changes.
    else if (time.hour + step.hours < 24) time = time.set({ hour: time.hour + step.hours });
    else time = time.plus({ days: 1 }).startOf("day");
  }
}

function textOf(time: DateTime, format: string): string {
  return time.toFormat(format === "HH:mm" && time.hour === 0 && time.minute === 0 ? "d LLL" : format);
}

/** An instant on the house's clock, for tables and sentences. */
export function clockText(atMs: number, timeZone: string, format = "d LLL yyyy HH:mm"): string {
  return onClock(atMs, timeZone).toFormat(format);
}

function onClock(atMs: number, timeZone: string): DateTime {
  const time = DateTime.fromMillis(atMs, { zone: timeZone, locale: "en-US" });
  if (!time.isValid) throw new RangeError(`Not a time zone or instant: ${timeZone}, ${atMs}`);
  return time;
}
