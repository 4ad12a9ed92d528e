import { OutOfRangeError } from "./errors";

declare const unit: unique symbol;

/** A number that knows its unit. The unit's symbol is the brand, so two units cannot be mixed up. */
export type Quantity<U extends string> = number & { readonly [unit]: U };

/** Makes a checked constructor. The comparison is written so that NaN fails too. */
export function quantity<U extends string>(name: string, symbol: U, min: number, max: number) {
  return (value: number): Quantity<U> => {
    if (!(value >= min && value <= max)) throw new OutOfRangeError(name, value, symbol, min, max);
    return value as Quantity<U>;
  };
}

export type Fahrenheit = Quantity<"°F">;
export type FahrenheitDifference = Quantity<"Δ°F">;
export type Psia = Quantity<"psia">;
export type Psig = Quantity<"psig">;
export type InWc = Quantity<"in. w.c.">;
export type Cfm = Quantity<"cfm">;
export type Btuh = Quantity<"Btu/h">;
export type LbPerH = Quantity<"lb/h">;
export type GrainsPerLb = Quantity<"gr/lb">;
export type HumidityRatio = Quantity<"lb/lb">;
export type BtuPerLb = Quantity<"Btu/lb">;
export type Ft3PerLb = Quantity<"ft³/lb">;
export type Percent = Quantity<"%">;
export type Ratio = Quantity<"ratio">;
export type Feet = Quantity<"ft">;
export type SquareFeet = Quantity<"ft²">;
export type SquareInches = Quantity<"in²">;
export type Watts = Quantity<"W">;
export type Kilowatts = Quantity<"kW">;
export type Pounds = Quantity<"lb">;
export type Ounces = Quantity<"oz">;
export type Minutes = Quantity<"min">;
export type Seconds = Quantity<"s">;

/** Temperature, °F: absolute zero to 3,000. */
export const fahrenheit = quantity("temperature", "°F", -459.67, 3_000);
/** Temperature difference, °F: −1,000 to 1,000. */
export const fahrenheitDifference = quantity("temperature difference", "Δ°F", -1_000, 1_000);
/** Absolute pressure, psia: 0 to 10,000. */
export const psia = quantity("absolute pressure", "psia", 0, 10_000);
/** Gauge pressure, psig: full vacuum to 10,000. */
export const psig = quantity("gauge pressure", "psig", -14.7, 10_000);
/** Static pressure, in. w.c.: −20 to 20. */
export const inWc = quantity("static pressure", "in. w.c.", -20, 20);
/** Airflow, cfm: 0 to 100,000. */
export const cfm = quantity("airflow", "cfm", 0, 100_000);
/** Heat flow, Btu/h: ±100 million (negative is heat given off). */
export const btuh = quantity("heat flow", "Btu/h", -1e8, 1e8);
/** Mass flow, lb/h: ±10 million. */
export const lbPerH = quantity("mass flow", "lb/h", -1e7, 1e7);
/** Moisture in air, grains of water per pound of dry air: 0 to 7,000. */
export const grainsPerLb = quantity("moisture content", "gr/lb", 0, 7_000);
/** Humidity ratio, lb of water per lb of dry air: 0 to 1. */
export const humidityRatio = quantity("humidity ratio", "lb/lb", 0, 1);
/** Enthalpy of moist air, Btu per lb of dry air: −100 to 2,000. */
export const btuPerLb = quantity("enthalpy", "Btu/lb", -100, 2_000);
/** Specific volume of moist air, ft³ per lb of dry air: 0 to 1,000. */
export const ft3PerLb = quantity("specific volume", "ft³/lb", 0, 1_000);
/** Percent, 0 to 100. */
export const percent = quantity("percentage", "%", 0, 100);
/** A plain ratio, −1,000 to 1,000. */
export const ratio = quantity("ratio", "ratio", -1_000, 1_000);
/** Length or height, ft: −2,000 to 1,000,000. */
export const feet = quantity("length", "ft", -2_000, 1_000_000);
/** Area, ft²: 0 to 10 million. */
export const squareFeet = quantity("area", "ft²", 0, 1e7);
/** Area, in²: 0 to 10 million. */
export const squareInches = quantity("area", "in²", 0, 1e7);
/** Electric power, W: 0 to 1 million. */
export const watts = quantity("power", "W", 0, 1e6);
/** Electric power, kW: 0 to 1,000. */
export const kilowatts = quantity("power", "kW", 0, 1_000);
/** Mass, lb: ±1 million. */
export const pounds = quantity("mass", "lb", -1e6, 1e6);
/** Mass, oz: ±1 million. */
export const ounces = quantity("mass", "oz", -1e6, 1e6);
/** Time, min: 0 to 10 million. */
export const minutes = quantity("time", "min", 0, 1e7);
/** Time, s: 0 to 1 billion. */
export const seconds = quantity("time", "s", 0, 1e9);

/** Refuses a plain number outside `min`…`max` (NaN included), naming it. For inputs without a brand. */
export function requireRange(
  name: string,
  value: number,
  unitSymbol: string,
  min: number,
  max: number,
): number {
  // Written out rather than by `quantity`: it is asked so often that a closure a call would show.
  if (!(value >= min && value <= max)) throw new OutOfRangeError(name, value, unitSymbol, min, max);
  return value;
}
