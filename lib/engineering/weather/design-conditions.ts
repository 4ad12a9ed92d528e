import { mean } from "simple-statistics";
import { moistAir } from "../air";
import { ImpossibleStateError } from "../errors";
import { type Fahrenheit, fahrenheit, type HumidityRatio } from "../units";
import type { Weather, WeatherChannel } from "./weather";

/** Hours whose value lies this close to the design value count as coincident: half a Celsius degree. */
const COINCIDENT_WITHIN_F = 0.9;
const NEEDED: readonly WeatherChannel[] = ["dryBulbF", "dewPointF", "pressurePsia", "humidityRatio"];
/** Fewer hours than this and a year's rarest hundredth is not a year's. */
const MOST_MISSING_SHARE = 0.02;

export type DesignConditions = {
  readonly cooling: { readonly dryBulbF: Fahrenheit; readonly coincidentWetBulbF: Fahrenheit };
  readonly dehumidification: {
    readonly dewPointF: Fahrenheit;
    readonly coincidentDryBulbF: Fahrenheit;
    /** Mean over the coincident hours, lb/lb. */
    readonly humidityRatio: HumidityRatio;
  };
  readonly heating: { readonly dryBulbF: Fahrenheit };
  /** Hours the percentiles rest on. */
  readonly hoursUsed: number;
  readonly method: string;
};

/** How the percentiles are taken, in words for the reader. */
export const DESIGN_METHOD =
  "Percentile of this one typical year's hours by rank (the hour of rank p·n, rounded up, from the lowest); coincident values are means over the hours within 0.9 °F of the design value.";

/**
 * Design conditions of a weather file, from its own hours.
 *
 * A typical year is not the long record published design values rest on, so the two differ by a few °F, most in winter.
 *
 * @param weather - From `parseEpw`: 8,760 hours, °F, psia.
 * @returns 1 % cooling dry bulb (exceeded in 1 % of hours) with mean coincident wet bulb, 1 % dew point with mean
 * coincident dry bulb and humidity ratio, 99 % heating dry bulb.
 * @throws {@link ImpossibleStateError} when more than 2 % of the hours lack temperature, dew point or pressure.
 * @see Percentile definitions of ASHRAE Handbook, Fundamentals 2017, ch. 14 (recalled), applied to one typical year.
 */
export function designConditions(weather: Weather): DesignConditions {
  const { dryBulbF, dewPointF, pressurePsia, humidityRatio } = weather;
  const whole = wholeHours(weather);
  if (whole.length === 0 || whole.length < weather.hourCount * (1 - MOST_MISSING_SHARE)) {
    throw new ImpossibleStateError(
      `${weather.hourCount - whole.length} of ${weather.hourCount} hours lack temperature, dew point or pressure; design conditions need a fuller file.`,
      NEEDED,
    );
  }
  const dryBulbs = picked(dryBulbF, whole).sort();
  const coolingF = ranked(dryBulbs, 0.99);
  const wettestF = ranked(picked(dewPointF, whole).sort(), 0.99);
  const atCooling = near(dryBulbF, coolingF, whole);
  const atDewPoint = near(dewPointF, wettestF, whole);
  const wetBulbs = Array.from(
    atCooling,
    (hour) =>
      moistAir({
        dryBulbF: dryBulbF[hour] ?? Number.NaN,
        pressurePsia: pressurePsia[hour] ?? Number.NaN,
        dewPointF: dewPointF[hour] ?? Number.NaN,
      }).wetBulbF,
  );
  return {
    cooling: { dryBulbF: fahrenheit(coolingF), coincidentWetBulbF: fahrenheit(mean(wetBulbs)) },
    dehumidification: {
      dewPointF: fahrenheit(wettestF),
      coincidentDryBulbF: fahrenheit(mean(Array.from(picked(dryBulbF, atDewPoint)))),
      humidityRatio: mean(Array.from(picked(humidityRatio, atDewPoint))) as HumidityRatio,
    },
    heating: { dryBulbF: fahrenheit(ranked(dryBulbs, 0.01)) },
    hoursUsed: whole.length,
    method: DESIGN_METHOD,
  };
}

/** The hours that have all of {@link NEEDED}. */
function wholeHours(weather: Weather): Uint32Array {
  const hours = new Uint32Array(weather.hourCount);
  let count = 0;
  for (let hour = 0; hour < weather.hourCount; hour++) {
    if (NEEDED.every((channel) => Number.isFinite(weather[channel][hour]))) hours[count++] = hour;
  }
  return hours.subarray(0, count);
}

function picked(values: Float64Array, hours: Uint32Array): Float64Array {
  const found = new Float64Array(hours.length);
  for (let index = 0; index < hours.length; index++) found[index] = values[hours[index] ?? 0] ?? Number.NaN;
  return found;
}

/** An hour that happened, never a mean of two: its own hour is always among the coincident ones. */
function ranked(sorted: Float64Array, p: number): number {
  return sorted[Math.ceil(p * sorted.length) - 1] ?? Number.NaN;
}

function near(values: Float64Array, value: number, hours: Uint32Array): Uint32Array {
  return hours.filter((hour) => Math.abs((values[hour] ?? Number.NaN) - value) <= COINCIDENT_WITHIN_F);
}
