import type { Weather } from "@/lib/engineering/weather";
import { hourOfYear } from "./forecast-lived/log-weather";

/** What it usually is outdoors at the times of a log, by a weather year: not what it was. */
export type TypicalOutdoors = {
  readonly name: string;
  readonly outdoorF: Float64Array;
  readonly dewPointF: Float64Array;
  readonly meanF: number;
  readonly meanDewPointF: number;
};

const HOUR_MS = 3_600_000;

/** The weather year's hours at the instants of a log, each reading with the hour it lies in; `null` for no instants. */
export function typicalOutdoors(
  timeMs: Float64Array,
  name: string,
  weather: Weather,
): TypicalOutdoors | null {
  if (timeMs.length === 0) return null;
  const outdoorF = new Float64Array(timeMs.length);
  const dewPointF = new Float64Array(timeMs.length);
  // The readings of an hour follow each other; zones of half hours change within one.
  let [part, hour] = [Number.NaN, 0];
  for (let index = 0; index < timeMs.length; index++) {
    const now = Math.floor((2 * (timeMs[index] ?? 0)) / HOUR_MS);
    if (now !== part) [part, hour] = [now, hourOfYear(timeMs[index] ?? 0, weather)];
    outdoorF[index] = weather.dryBulbF[hour] ?? Number.NaN;
    dewPointF[index] = weather.dewPointF[hour] ?? Number.NaN;
  }
  return { name, outdoorF, dewPointF, meanF: meanOf(outdoorF), meanDewPointF: meanOf(dewPointF) };
}

const meanOf = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0) / values.length;
