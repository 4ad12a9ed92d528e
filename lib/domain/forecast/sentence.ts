import type { KeptForecast } from "./kept";

const whole = (hours: number) => Math.round(hours).toLocaleString("en-US");

/** The kept forecast in one sentence a homeowner understands. */
export function forecastSentence({ figures, humidityLimitPct, weatherName }: KeptForecast): string {
  const { dryHours, hoursAboveLimit } = figures.ranges;
  const hours = whole(dryHours.central + hoursAboveLimit.central);
  const spread =
    Math.round(dryHours.low) === Math.round(dryHours.high)
      ? ""
      : `, and from ${whole(dryHours.low)} to ${whole(dryHours.high)} for what is not known of the house and the year`;
  return `In a typical year (${weatherName}) this design is forecast to keep the house at or below ${humidityLimitPct} % for about ${whole(dryHours.central)} of ${hours} hours${spread}.`;
}
