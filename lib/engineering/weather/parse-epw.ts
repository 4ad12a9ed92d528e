import { moistAir } from "../air";
import { ImpossibleStateError, isEngineeringError } from "../errors";
import { requireRange } from "../units";
import { EPW_COLUMNS, EPW_LEAST_COLUMNS, type EpwColumn } from "./epw-columns";
import {
  WEATHER_CHANNELS,
  type Weather,
  type WeatherChannel,
  type WeatherGap,
  type WeatherPlace,
} from "./weather";

const HEADER_LINES = 8;
const FEET_PER_METRE = 1 / 0.3048;
const HOURS_OF_A_YEAR = 8_760;
const HOURS_OF_A_LEAP_YEAR = 8_784;

/**
 * Reads an EPW weather file of hourly values for one year.
 *
 * Humidity ratio comes from dew point and pressure, or from relative humidity where the dew point is missing. The file
 * gives dew points over liquid water also below freezing, where moist air here uses frost points: humidity ratios of
 * hours below about 20 °F read up to a tenth high. That is outside what cooling is judged by.
 *
 * @param text - The whole file.
 * @returns Place and hours in °F, psia, lb/lb, mph and Btu/(h·ft²). A missing code becomes a gap: NaN, and listed.
 * @throws {@link ImpossibleStateError} naming row and column of what cannot be read, and what the file lacks.
 * @throws {@link OutOfRangeError} naming row and column of a value outside the format's range.
 * @see EPW data dictionary, EnergyPlus Auxiliary Programs documentation (published).
 */
export function parseEpw(text: string): Weather {
  const lines = text.replace(/^\uFEFF/, "").split(/\r\n|\n|\r/);
  while (lines.length > 0 && lines.at(-1)?.trim() === "") lines.pop();
  const place = parsePlace(lines[0] ?? "");
  requireHourly(lines.slice(1, HEADER_LINES));
  const rows = lines.slice(HEADER_LINES);
  if (rows.length !== HOURS_OF_A_YEAR && rows.length !== HOURS_OF_A_LEAP_YEAR) {
    throw new ImpossibleStateError(
      `The weather file has ${rows.length} hours; a year has 8,760 (8,784 with 29 February). Get the whole file.`,
      ["hours"],
    );
  }
  return parseHours(place, rows);
}

function parsePlace(line: string): WeatherPlace {
  const cells = line.split(",").map((cell) => cell.trim());
  if (cells[0]?.toUpperCase() !== "LOCATION") {
    throw new ImpossibleStateError(
      "Row 1 does not begin with LOCATION, so this is not an EPW weather file; choose the .epw file.",
      ["row 1"],
    );
  }
  const at = (position: number, title: string, unit: string, min: number, max: number): number =>
    requireRange(
      `row 1, column ${position} (${title})`,
      readNumber(cells[position - 1], 1, position, title),
      unit,
      min,
      max,
    );
  return {
    city: cells[1] ?? "",
    state: cells[2] ?? "",
    country: cells[3] ?? "",
    source: cells[4] ?? "",
    stationNumber: cells[5] ?? "",
    latitudeDeg: at(7, "latitude", "°", -90, 90),
    longitudeDeg: at(8, "longitude", "°", -180, 180),
    timeZoneH: at(9, "time zone", "h", -12, 14),
    elevationFt: at(10, "elevation", "m", -500, 6_000) * FEET_PER_METRE,
  };
}

function requireHourly(header: readonly string[]): void {
  const periods = header.find((line) => line.toUpperCase().startsWith("DATA PERIODS"));
  if (periods === undefined) {
    throw new ImpossibleStateError("The header has no DATA PERIODS line in rows 2 to 8.", ["DATA PERIODS"]);
  }
  const perHour = periods.split(",")[2]?.trim();
  if (perHour !== "1") {
    throw new ImpossibleStateError(
      `DATA PERIODS says ${perHour ?? "nothing"} records an hour; only hourly files (1) are read.`,
      ["DATA PERIODS"],
    );
  }
}

function parseHours(place: WeatherPlace, rows: readonly string[]): Weather {
  const count = rows.length;
  const month = new Uint8Array(count);
  const day = new Uint8Array(count);
  const hour = new Uint8Array(count);
  const channels = emptyChannels(count);
  const gaps: WeatherGap[] = [];
  const expected = calendar(count === HOURS_OF_A_LEAP_YEAR);
  for (const [index, line] of rows.entries()) {
    const row = index + HEADER_LINES + 1;
    const cells = line.split(",");
    if (cells.length < EPW_LEAST_COLUMNS) {
      throw new ImpossibleStateError(
        `Row ${row} has ${cells.length} columns; at least ${EPW_LEAST_COLUMNS} are needed.`,
        [`row ${row}`],
      );
    }
    const date = expected[index];
    const read = [2, 3, 4].map((at, k) =>
      readNumber(cells[at - 1], row, at, ["month", "day", "hour"][k] ?? ""),
    );
    if (date === undefined || read.some((value, k) => value !== date[k])) {
      throw new ImpossibleStateError(
        `Row ${row}, columns 2 to 4: month ${read[0]}, day ${read[1]}, hour ${read[2]} instead of ${date?.join(", ")}; hours are missing, doubled or out of order.`,
        [`row ${row}`, "month, day, hour"],
      );
    }
    [month[index], day[index], hour[index]] = date;
    for (const column of EPW_COLUMNS) {
      const value = readCell(column, cells[column.position - 1], row);
      channels[column.channel][index] = value;
      if (Number.isNaN(value)) gaps.push({ channel: column.channel, hourIndex: index, row });
    }
    const humidityRatio = humidityRatioOf(channels, index, row);
    channels.humidityRatio[index] = humidityRatio;
    if (Number.isNaN(humidityRatio)) gaps.push({ channel: "humidityRatio", hourIndex: index, row });
  }
  return { place, hourCount: count, month, day, hour, gaps, ...channels };
}

function emptyChannels(count: number): Record<WeatherChannel, Float64Array> {
  const channels = WEATHER_CHANNELS.map((channel) => [channel, new Float64Array(count)] as const);
  return Object.fromEntries(channels) as Record<WeatherChannel, Float64Array>;
}

/** The cell's value in the channel's unit, or NaN where the file says it is missing. */
function readCell(column: EpwColumn, cell: string | undefined, row: number): number {
  const value = readNumber(cell, row, column.position, column.title);
  if (value >= column.missingFrom) return Number.NaN;
  const where = `row ${row}, column ${column.position} (${column.title})`;
  return column.convert(requireRange(where, value, column.unit, column.min, column.max));
}

function readNumber(cell: string | undefined, row: number, position: number, title: string): number {
  const words = cell?.trim() ?? "";
  const value = words === "" ? Number.NaN : Number(words);
  if (!Number.isFinite(value)) {
    throw new ImpossibleStateError(
      `Row ${row}, column ${position} (${title}): "${words.slice(0, 40)}" is not a number.`,
      [`row ${row}`, title],
    );
  }
  return value;
}

function humidityRatioOf(channels: Record<WeatherChannel, Float64Array>, index: number, row: number): number {
  const at = (channel: WeatherChannel) => channels[channel][index] ?? Number.NaN;
  const place = { dryBulbF: at("dryBulbF"), pressurePsia: at("pressurePsia") };
  const dewPointF = at("dewPointF");
  const relativeHumidityPct = at("relativeHumidityPct");
  if (Number.isNaN(place.dryBulbF) || Number.isNaN(place.pressurePsia)) return Number.NaN;
  if (Number.isNaN(dewPointF) && Number.isNaN(relativeHumidityPct)) return Number.NaN;
  try {
    return moistAir(Number.isNaN(dewPointF) ? { ...place, relativeHumidityPct } : { ...place, dewPointF })
      .humidityRatio;
  } catch (error) {
    if (!isEngineeringError(error)) throw error;
    throw new ImpossibleStateError(`Row ${row}, columns 7 to 10: ${error.message}.`, [
      `row ${row}`,
      "dry bulb, dew point, relative humidity, atmospheric pressure",
    ]);
  }
}

/** Month, day and hour of every row a year has. */
function calendar(leap: boolean): readonly (readonly [number, number, number])[] {
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  return days.flatMap((length, month) =>
    Array.from(
      { length: length * 24 },
      (_, hour) => [month + 1, Math.floor(hour / 24) + 1, (hour % 24) + 1] as const,
    ),
  );
}
