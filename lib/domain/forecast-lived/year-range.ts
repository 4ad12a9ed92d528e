import {
  type ForecastHouse,
  type ForecastOption,
  type ForecastRange,
  forecastYears,
  prepareForecast,
} from "@/lib/engineering/simulation";
import type { Weather } from "@/lib/engineering/weather";

type Asked = {
  readonly house: ForecastHouse;
  readonly option: ForecastOption;
  readonly weather: Weather;
  readonly humidityLimitPct: number;
  readonly members: number;
  readonly seed: number;
};

/** Hours of the weather file's whole year above the limit, as a range; yields after every year. */
export function* yearRange<T>({ option, ...asked }: Asked, step: () => T): Generator<T, ForecastRange, void> {
  const hours: number[] = [];
  for (const { figures } of forecastYears(prepareForecast({ ...asked, options: [option] }))) {
    if (figures !== null) hours.push(figures.hoursAboveLimit);
    yield step();
  }
  return { central: hours[0] ?? Number.NaN, low: Math.min(...hours), high: Math.max(...hours) };
}
