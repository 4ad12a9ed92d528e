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
  const whole = Array.from({ length: weather.hourCount }, (_, hour) => hour).filter((hour) =>
    NEEDED.every((channel) => Number.isFinite(weather[channel][hour])),
  );
  if (whole.length === 0 || whole.length < weather.hourCount * (1 - MOST_MISSING_SHARE)) {
    throw new ImpossibleStateError(
      `${weather.hourCount - whole.length} of ${weather.hourCount} hours lack temperature, dew point or pressure; design conditions need a fuller file.`,
      NEEDED,
    );
  }
  const at = (channel: WeatherChannel, hour: number): number => weather[channel][hour] ?? Number.NaN;
  // An hour that happened, never a mean of two: its own hour is always among the coincident ones.
  const percentile = (channel: WeatherChannel, p: number): number => {
    const ranked = Float64Array.from(whole, (hour) => at(channel, hour)).sort();
    return ranked[Math.ceil(p * ranked.length) - 1] ?? Number.NaN;
  };
  const near = (channel: WeatherChannel, value: number): readonly number[] =>
    whole.filter((hour) => Math.abs(at(channel, hour) - value) <= COINCIDENT_WITHIN_F);

  const coolingF = percentile("dryBulbF", 0.99);
  const dewPointF = percentile("dewPointF", 0.99);
  const atCooling = near("dryBulbF", coolingF);
  const atDewPoint = near("dewPointF", dewPointF);
  const wetBulbs = atCooling.map(
    (hour) =>
      moistAir({
        dryBulbF: at("dryBulbF", hour),
        pressurePsia: at("pressurePsia", hour),
        dewPointF: at("dewPointF", hour),
      }).wetBulbF,
  );
  return {
    cooling: { dryBulbF: fahrenheit(coolingF), coincidentWetBulbF: fahrenheit(mean(wetBulbs)) },
    dehumidification: {
      dewPointF: fahrenheit(dewPointF),
      coincidentDryBulbF: fahrenheit(mean(atDewPoint.map((hour) => at("dryBulbF", hour)))),
      humidityRatio: mean(atDewPoint.map((hour) => at("humidityRatio", hour))) as HumidityRatio,
    },
    heating: { dryBulbF: fahrenheit(percentile("dryBulbF", 0.01)) },
    hoursUsed: whole.length,
    method: DESIGN_METHOD,
  };
}
