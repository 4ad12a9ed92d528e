import type { WeatherChannel } from "./weather";

/** A column this product reads: where it is, what it may hold, when it says "missing", and how it is converted. */
export type EpwColumn = {
  readonly channel: Exclude<WeatherChannel, "humidityRatio">;
  readonly title: string;
  /** From 1, as a person counts. */
  readonly position: number;
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  /** A value at or above this means "missing". */
  readonly missingFrom: number;
  readonly convert: (value: number) => number;
};

const toF = (celsius: number) => celsius * 1.8 + 32;
/** 1 psi = 6,894.757293168 Pa, by definition of the pound and the inch. */
const toPsia = (pascal: number) => pascal / 6_894.757293168;
/** 1 mile = 1,609.344 m, by definition. */
const toMph = (metresPerSecond: number) => (metresPerSecond * 3_600) / 1_609.344;
/** 1 W/m² = 0.3169983 Btu/(h·ft²): 3.412141633 Btu/Wh ÷ 10.763910417 ft²/m². Wh/m² over an hour are its mean W/m². */
const toBtuhPerFt2 = (wattPerM2: number) => wattPerM2 * (3.412141633 / 10.763910417);
const asIs = (value: number) => value;

/**
 * Ranges and missing codes of the EPW data dictionary, EnergyPlus Auxiliary Programs (published). Relative humidity
 * may read up to 110 there, but is taken only to 100 here: more water than saturated air holds is no state.
 */
export const EPW_COLUMNS: readonly EpwColumn[] = [
  column("dryBulbF", "dry bulb", 7, "°C", -70, 70, 99.9, toF),
  column("dewPointF", "dew point", 8, "°C", -70, 70, 99.9, toF),
  column("relativeHumidityPct", "relative humidity", 9, "%", 0, 100, 999, asIs),
  column("pressurePsia", "atmospheric pressure", 10, "Pa", 31_000, 120_000, 999_999, toPsia),
  column("skyInfraredBtuhPerFt2", "sky infrared radiation", 13, "Wh/m²", 0, 2_000, 9_999, toBtuhPerFt2),
  column(
    "globalHorizontalBtuhPerFt2",
    "global horizontal radiation",
    14,
    "Wh/m²",
    0,
    2_000,
    9_999,
    toBtuhPerFt2,
  ),
  column("directNormalBtuhPerFt2", "direct normal radiation", 15, "Wh/m²", 0, 2_000, 9_999, toBtuhPerFt2),
  column(
    "diffuseHorizontalBtuhPerFt2",
    "diffuse horizontal radiation",
    16,
    "Wh/m²",
    0,
    2_000,
    9_999,
    toBtuhPerFt2,
  ),
  column("windDirectionDeg", "wind direction", 21, "°", 0, 360, 999, asIs),
  column("windMph", "wind speed", 22, "m/s", 0, 60, 999, toMph),
];

/** Columns a row needs so that all of the above exist. */
export const EPW_LEAST_COLUMNS = 22;

function column(
  channel: EpwColumn["channel"],
  title: string,
  position: number,
  unit: string,
  min: number,
  max: number,
  missingFrom: number,
  convert: (value: number) => number,
): EpwColumn {
  return { channel, title, position, unit, min, max, missingFrom, convert };
}
