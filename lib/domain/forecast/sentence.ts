import type { KeptForecast } from "./kept";

const whole = (hours: number) => Math.round(hours).toLocaleString("en-US");

/**
 * The weather file's place without what the sentence says anyway.
 *
 * @param weatherName - As listed, such as `Houston, typical year (TMY2)`.
 */
export function weatherPlace(weatherName: string): string {
  return weatherName.replace(/,? *typical year(?: \([^)]*\))?/i, "").trim() || weatherName;
}

/** The kept forecast in one sentence a homeowner understands. */
export function forecastSentence({ figures, humidityLimitPct, weatherName }: KeptForecast): string {
  const { dryHours, hoursAboveLimit } = figures.ranges;
  const hours = whole(dryHours.central + hoursAboveLimit.central);
  const spread =
    Math.round(dryHours.low) === Math.round(dryHours.high)
      ? ""
      : `, and from ${whole(dryHours.low)} to ${whole(dryHours.high)} for what is not known of the house and the year`;
  const dry = whole(dryHours.central);
  const share = dry === hours ? `all ${hours}` : `about ${dry} of ${hours}`;
  return `In a typical year (${weatherPlace(weatherName)}) this design is forecast to keep the house at or below ${humidityLimitPct} % for ${share} hours${spread}.`;
}
