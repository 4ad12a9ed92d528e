import { requireRange } from "../units";
import { emptyTotals, firstState } from "./simulate-year";
import { runHours, type YearTotals } from "./year-loop";
import { type YearInput, yearPlan } from "./year-plan";

/** Some hours of a year, one element an hour. */
export type HouseSpan = {
  readonly roomF: Float64Array;
  readonly rhPct: Float64Array;
  /** Minutes above the humidity limit. */
  readonly wetMinutes: Float64Array;
  /** Minutes the compressor ran. */
  readonly runMinutes: Float64Array;
};

/** Hours run before the span, so that it does not begin with a guess of mass and furnishings. */
const RUN_IN_H = 336;

/**
 * Part of a year of this house with this system: the year's own loop over the hours of a log, two weeks before them run to settle.
 *
 * @param input - As for `simulateYear`.
 * @param firstHour - Hour of the year the span begins with, 0 to hours − 1; a span that passes the year's end goes on at its start.
 * @param hours - 1 h to the weather's hours.
 * @returns The hours, in order.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} naming the field; {@link NotConvergedError} as the coil.
 * @see `simulateYear` (physics).
 */
export function simulateSpan(input: YearInput, firstHour: number, hours: number): HouseSpan {
  const plan = yearPlan(input);
  requireRange("firstHour", firstHour, "h", 0, plan.hours - 1);
  requireRange("hours", hours, "h", 1, plan.hours);
  const state = firstState(plan);
  const run = (from: number, count: number, totals: YearTotals): void => {
    const untilEnd = Math.min(count, plan.hours - from);
    runHours(plan, state, from, from + untilEnd, totals);
    runHours(plan, state, 0, count - untilEnd, totals);
  };
  const runIn = Math.min(RUN_IN_H, plan.hours);
  run((firstHour - runIn + plan.hours) % plan.hours, runIn, emptyTotals(plan, null));
  const totals = emptyTotals(plan, null);
  run(firstHour, hours, totals);
  const cut = (column: Float64Array) =>
    Float64Array.from({ length: hours }, (_, hour) => column[(firstHour + hour) % plan.hours] ?? Number.NaN);
  return {
    roomF: cut(totals.hourF),
    rhPct: cut(totals.hourRhPct),
    wetMinutes: cut(totals.hourWetMinutes),
    runMinutes: cut(totals.hourRunMinutes),
  };
}
