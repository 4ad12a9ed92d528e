/** Where a weather file was made for. */
export type WeatherPlace = {
  readonly city: string;
  readonly state: string;
  readonly country: string;
  /** What the file says its data come from. */
  readonly source: string;
  readonly stationNumber: string;
  /** North positive, °. */
  readonly latitudeDeg: number;
  /** East positive, °. */
  readonly longitudeDeg: number;
  /** Hours ahead of UTC, standard time all year. */
  readonly timeZoneH: number;
  readonly elevationFt: number;
};

/** The hourly channels. In a gap a channel holds NaN, and the gap is listed. */
export const WEATHER_CHANNELS = [
  "dryBulbF",
  "dewPointF",
  "relativeHumidityPct",
  "pressurePsia",
  "humidityRatio",
  "windMph",
  "windDirectionDeg",
  "globalHorizontalBtuhPerFt2",
  "directNormalBtuhPerFt2",
  "diffuseHorizontalBtuhPerFt2",
  "skyInfraredBtuhPerFt2",
] as const;
export type WeatherChannel = (typeof WEATHER_CHANNELS)[number];

/** Hours in which a channel says nothing; `row` is the file's own line number. */
export type WeatherGap = {
  readonly channel: WeatherChannel;
  readonly hourIndex: number;
  readonly row: number;
};

/**
 * A weather year, one element an hour. Element i of a leap-free year belongs to hour i + 1 of the year: temperatures,
 * humidity, pressure and wind at the end of that hour, radiation the mean over it. Standard time, no clock changes.
 */
export type Weather = {
  readonly place: WeatherPlace;
  /** 8,760, or 8,784 in a leap year. */
  readonly hourCount: number;
  readonly month: Uint8Array;
  readonly day: Uint8Array;
  /** 1 to 24. */
  readonly hour: Uint8Array;
  readonly gaps: readonly WeatherGap[];
} & { readonly [K in WeatherChannel]: Float64Array };
