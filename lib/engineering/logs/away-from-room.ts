import type { LogSeries } from "./log-series";

/** A room whose thermostat is content stays nearer to its setpoint than this, °F (common practice, no source). */
const FAR_F = 10;
/** Hotter than this no room that is lived in and cooled gets, °F (common practice, no source). */
const HOT_F = 100;
const IDLE = 0.1;
const LEAST_HOURS_A_DAY = 2;
/** The day's running, of its time: the thermostat called that day, so the power was on. */
const LEAST_DUTY = 0.05;

/**
 * Days on which the sensor cannot have hung in the thermostat's room: for two hours or more it read 10 °F above the setpoint while
 * the compressor rested on a day it ran, or 100 °F and more.
 *
 * @returns Days, 0 or more; null without indoor temperature.
 * @see common practice, no source.
 */
export function daysAwayFromRoom(series: LogSeries): number | null {
  const indoorF = series.channel("indoorF");
  if (indoorF === null) return null;
  const setpointF = series.channel("setpointF");
  const days = new Map<number, { count: number; on: number; far: number; hot: number }>();
  for (let index = 0; index < series.length; index++) {
    const reading = indoorF[index] ?? Number.NaN;
    if (Number.isNaN(reading)) continue;
    const key = series.localDay[index] ?? 0;
    const day = days.get(key) ?? { count: 0, on: 0, far: 0, hot: 0 };
    days.set(key, day);
    day.count++;
    if (reading >= HOT_F) day.hot++;
    const on = series.coolingShare?.[index] ?? Number.NaN;
    if (Number.isNaN(on)) continue;
    day.on += on;
    const set = setpointF?.[index] ?? Number.NaN;
    if (on < IDLE && reading - set > FAR_F) day.far++;
  }
  const long = (count: number) => count * series.hoursEach >= LEAST_HOURS_A_DAY;
  return [...days.values()].filter(
    ({ count, on, far, hot }) => long(hot) || (long(far) && on / count >= LEAST_DUTY),
  ).length;
}
