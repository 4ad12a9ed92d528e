import type { LogChannel } from "@/lib/engineering/logs";
import { cellNumber } from "./cell-number";
import { readDateCell, readTimeCell } from "./date-cell";
import { type ColumnUnit, type LogMapping, type MappedColumn, unitsOf } from "./mapping";
import { rowOf, type Table } from "./table";

/** Rows looked at to tell units by their values. */
const LOOK = 2_000;

type Rows = readonly (readonly string[])[];
type Words = { readonly all: ReadonlySet<string>; readonly joined: string };
type Guess = { readonly channel: LogChannel; readonly fits: (words: Words) => number };

const has = (words: Words, ...any: readonly string[]) => any.some((word) => words.all.has(word));
const isOutdoor = (words: Words) =>
  has(words, "out", "outdoor", "outside", "oa", "oat", "ambient", "weather", "exterior");
const isIndoor = (words: Words) =>
  has(words, "in", "indoor", "inside", "room", "thermostat", "zone", "return", "living");
const isHumidity = (words: Words) => has(words, "rh", "humidity", "hum");
const isDewPoint = (words: Words) => /dew_?point/.test(words.joined) || has(words, "dewpt", "tdp");
const isTemperature = (words: Words) =>
  has(words, "temp", "tmp", "temperature", "t", "tdb", "drybulb", "oat");
const isSetpoint = (words: Words) => has(words, "setpoint", "set", "sp", "target");
const isHeating = (words: Words) => has(words, "heat", "heating", "w1", "w2");
const isCooling = (words: Words) =>
  has(words, "cool", "cooling", "compressor", "ac", "stage", "y1", "y2", "y");
const isSecond = (words: Words) => has(words, "2", "second", "stage2", "cool2", "y2", "high");
const numbered = (words: Words, digit: string) => words.all.has(digit);

/** How well a heading fits a channel, 0 for not at all. The best heading of a channel is suggested. */
const GUESSES: readonly Guess[] = [
  {
    channel: "setpointF",
    fits: (w) => (isSetpoint(w) && !isHumidity(w) ? (isHeating(w) ? 1 : isCooling(w) ? 3 : 2) : 0),
  },
  { channel: "outdoorDewPointF", fits: (w) => (isDewPoint(w) && !isIndoor(w) ? 2 : 0) },
  { channel: "outdoorRhPct", fits: (w) => (isHumidity(w) && isOutdoor(w) && !isSetpoint(w) ? 2 : 0) },
  {
    channel: "outdoorF",
    fits: (w) =>
      isTemperature(w) && isOutdoor(w) && !isHumidity(w) && !isSetpoint(w) && !isDewPoint(w) ? 2 : 0,
  },
  {
    channel: "indoorRhPct",
    fits: (w) =>
      !isHumidity(w) || isOutdoor(w) || isSetpoint(w)
        ? 0
        : isIndoor(w)
          ? 3
          : numbered(w, "1")
            ? 2
            : hasDigit(w)
              ? 0
              : 1,
  },
  {
    channel: "indoorF",
    fits: (w) =>
      !isTemperature(w) ||
      isHumidity(w) ||
      isOutdoor(w) ||
      isSetpoint(w) ||
      isDewPoint(w) ||
      isCooling(w) ||
      isHeating(w)
        ? 0
        : isIndoor(w)
          ? 3
          : numbered(w, "1")
            ? 2
            : hasDigit(w)
              ? 0
              : 1,
  },
  {
    channel: "secondStageShare",
    fits: (w) =>
      isCooling(w) && isSecond(w) && !isTemperature(w) && !isSetpoint(w) && !isHeating(w) ? 2 : 0,
  },
  {
    channel: "firstStageShare",
    fits: (w) =>
      isCooling(w) && !isSecond(w) && !isTemperature(w) && !isSetpoint(w) && !isHeating(w) ? 2 : 0,
  },
  { channel: "fanShare", fits: (w) => (has(w, "fan", "blower", "g") && !isSetpoint(w) ? 2 : 0) },
  { channel: "auxiliaryShare", fits: (w) => (has(w, "aux", "auxiliary", "strip", "strips") ? 2 : 0) },
];

/**
 * A mapping suggested by headings and values: a proposal for a person to look over.
 * Null when no time column or no known channel is found.
 */
export function suggestMapping(table: Table): LogMapping | null {
  const words = table.headings.map(wordsOf);
  const rows = Array.from({ length: Math.min(LOOK, table.cells.rowCount) }, (_, row) =>
    rowOf(table.cells, row),
  );
  const time = timeHeadings(words, rows);
  if (time === null) return null;
  const taken = new Set<number>(time.columns);
  const columns: MappedColumn[] = [];
  for (const { channel, fits } of GUESSES) {
    let best = { index: -1, score: 0 };
    for (const [index, one] of words.entries()) {
      const score = taken.has(index) ? 0 : fits(one);
      if (score > best.score && hasNumbers(rows, index, table)) best = { index, score };
    }
    const heading = table.headings[best.index];
    if (heading === undefined) continue;
    taken.add(best.index);
    columns.push({ heading, channel, unit: unitOf(channel, heading, numbersOf(rows, best.index, table)) });
  }
  if (columns.length === 0) return null;
  return {
    version: 1,
    timeHeading: table.headings[time.columns[0]] ?? "",
    timeOfDayHeading: time.columns[1] === undefined ? null : (table.headings[time.columns[1]] ?? null),
    dateOrder: null,
    columns,
    onlyWhere: null,
  };
}

function wordsOf(heading: string): Words {
  const joined = heading
    .replace(/([a-z])([A-Z])/g, "$1_$2")
    .replace(/([A-Za-z])(\d)/g, "$1_$2")
    .toLowerCase()
    .replace(/°/g, " deg")
    .replace(/[^a-z0-9%]+/g, "_");
  const parts = joined.split("_").filter((part) => part !== "");
  // "y1", "stage2": the pieces as well as the pair they were written as.
  const pairs = parts.slice(1).map((part, index) => `${parts[index]}${part}`);
  return { all: new Set([...parts, ...pairs]), joined };
}

const hasDigit = (words: Words) => [...words.all].some((word) => /^\d+$/.test(word));

function timeHeadings(
  words: readonly Words[],
  rows: Rows,
): { readonly columns: readonly [number] | readonly [number, number] } | null {
  const share = (index: number, reads: (cell: string) => boolean) =>
    rows.filter((cells) => reads(cells[index] ?? "")).length / rows.length;
  const dates = words.flatMap((one, index) =>
    share(index, (cell) => readDateCell(cell) !== null) > 0.5 ? [{ index, local: has(one, "local") }] : [],
  );
  const date = dates.find(({ local }) => local) ?? dates[0];
  if (date === undefined) return null;
  const dateOnly = rows.every((cells) => !(cells[date.index] ?? "").includes(":"));
  const times = words.flatMap((_, index) =>
    share(index, (cell) => readTimeCell(cell) !== null) > 0.5 ? [index] : [],
  );
  const [time] = times;
  return { columns: dateOnly && time !== undefined ? [date.index, time] : [date.index] };
}

function hasNumbers(rows: Rows, index: number, table: Table): boolean {
  return numbersOf(rows, index, table).length > 0;
}

function numbersOf(rows: Rows, index: number, table: Table): readonly number[] {
  return rows
    .map((cells) => cellNumber(cells[index] ?? "", table.delimiter))
    .filter((value) => Number.isFinite(value));
}

/** The unit by the heading's own word, else by the values. */
function unitOf(channel: LogChannel, heading: string, values: readonly number[]): ColumnUnit {
  const { all } = wordsOf(heading);
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted[Math.floor(sorted.length / 2)] ?? 0;
  const most = sorted.at(-1) ?? 0;
  if (unitsOf(channel).includes("°F")) {
    if (["f", "degf", "fahrenheit"].some((word) => all.has(word))) return "°F";
    if (["c", "degc", "celsius"].some((word) => all.has(word))) return "°C";
    // A lived-in room is between 50 and 95 °F, or between 10 and 35 °C; outdoors the warmest hours tell.
    return (channel.startsWith("outdoor") ? most : middle) < 45 ? "°C" : "°F";
  }
  if (channel.endsWith("RhPct")) return most <= 1 ? "fraction" : "%";
  if (["sec", "secs", "seconds", "s"].some((word) => all.has(word))) return "seconds";
  if (["min", "mins", "minutes"].some((word) => all.has(word))) return "minutes";
  if (all.has("%") || all.has("pct") || all.has("percent")) return "%";
  if (values.every((value) => value === 0 || value === 1)) return "on/off";
  return most <= 1 ? "share" : "seconds";
}
