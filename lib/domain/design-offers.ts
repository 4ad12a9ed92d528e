import type { WeatherDesign } from "./evaluate/context";
import type { LoadSummaryInputs } from "./stages/load-summary";

export type DesignOffer = {
  readonly field: keyof LoadSummaryInputs;
  /** Which value of the year it is, in words. */
  readonly name: string;
  /** °F, rounded as the field shows it. */
  readonly value: number;
};

/** The design values of a weather file, each with its name and the field of the load summary it belongs to. */
export function designOffers(weather: WeatherDesign): readonly DesignOffer[] {
  const offer = (field: DesignOffer["field"], name: string, value: number): DesignOffer => ({
    field,
    name,
    value: Math.round(value * 10) / 10,
  });
  return [
    offer("outdoorCoolingDbF", "1 % cooling dry bulb", weather.coolingDbF),
    offer("outdoorCoolingWbF", "mean wet bulb with it", weather.coolingWbF),
    offer("outdoorHeatingDbF", "99 % heating dry bulb", weather.heatingDbF),
    offer("wetMildDewPointF", "1 % dew point", weather.wetDewPointF),
    offer("wetMildDbF", "mean dry bulb with that dew point", weather.wetDbF),
  ];
}
