import { readNumberCell } from "./cell-number";
import type { Delimiter } from "./table";

/** The cells of a table by row and column, kept as places in its text: a year of rows makes a million cells. */
export type Cells = {
  readonly rowCount: number;
  /** Line of a row in the file, from 1. */
  readonly line: (row: number) => number;
  readonly width: (row: number) => number;
  /** A cell as written; "" beyond the end of its row. */
  readonly cell: (row: number, column: number) => string;
  /** The numbers of a column for some rows: NaN for an empty cell, {@link NO_NUMBER} for one that is none. */
  readonly numbers: (column: number, rows: Uint32Array) => Float64Array;
  /** Visits a column from top to bottom: each cell is a part of a text. */
  readonly each: (
    column: number,
    visit: (text: string, from: number, to: number, row: number) => void,
  ) => void;
  readonly sameRow: (one: number, other: number) => boolean;
  /** Some of the rows, in the order given. */
  readonly pick: (rows: Uint32Array) => Cells;
};

/** Stands for a cell that holds something else than a number; no cell reads as infinite. */
export const NO_NUMBER = Number.NEGATIVE_INFINITY;

const LINE_FEED = 10;
const RETURN = 13;
const BLANK = 32;
const MINUS = 45;
const POINT = 46;
const ZERO = 48;
const NINE = 57;
const DELETE = 127;
/** More digits may be more than a double holds exactly. */
const MOST_DIGITS = 15;
const TENTHS = Float64Array.from({ length: MOST_DIGITS + 1 }, (_, places) => 10 ** places);

/** Cells of a text without quotes: a line is a row. Lines of nothing but blanks are left out. */
export function cellsOfText(text: string, delimiter: Delimiter): Cells {
  const places = placesIn(text, delimiter.charCodeAt(0));
  return textCells(text, delimiter, places, null);
}

/** Cells that were taken apart already. */
export function cellsOfRows(
  rows: readonly (readonly string[])[],
  lines: readonly number[],
  delimiter: Delimiter,
): Cells {
  const cell = (row: number, column: number) => rows[row]?.[column] ?? "";
  return {
    rowCount: rows.length,
    line: (row) => lines[row] ?? 0,
    width: (row) => rows[row]?.length ?? 0,
    cell,
    numbers: (column, chosen) =>
      Float64Array.from(chosen, (row) => readNumberCell(cell(row, column), delimiter) ?? NO_NUMBER),
    each: (column, visit) => {
      for (let row = 0; row < rows.length; row++) visit(cell(row, column), 0, cell(row, column).length, row);
    },
    sameRow: (one, other) => rows[one]?.join("\n") === rows[other]?.join("\n"),
    pick: (chosen) =>
      cellsOfRows(
        Array.from(chosen, (row) => rows[row] ?? []),
        Array.from(chosen, (row) => lines[row] ?? 0),
        delimiter,
      ),
  };
}

type Places = {
  /** Where each cell begins. */
  readonly starts: Uint32Array;
  /** The first cell of each row, and one more. */
  readonly firsts: Uint32Array;
  readonly ends: Uint32Array;
  readonly lines: Uint32Array;
  readonly rowCount: number;
};

function textCells(text: string, delimiter: Delimiter, places: Places, chosen: Uint32Array | null): Cells {
  const { starts, firsts, ends, lines } = places;
  const rowAt = (row: number) => (chosen === null ? row : (chosen[row] ?? 0));
  const from = (cell: number) => starts[cell] ?? 0;
  const to = (row: number, cell: number) =>
    cell + 1 < (firsts[row + 1] ?? 0) ? (starts[cell + 1] ?? 0) - 1 : (ends[row] ?? 0);
  const cell = (row: number, column: number) => {
    const at = rowAt(row);
    const index = (firsts[at] ?? 0) + column;
    return index < (firsts[at + 1] ?? 0) ? text.slice(from(index), to(at, index)) : "";
  };
  return {
    rowCount: chosen === null ? places.rowCount : chosen.length,
    line: (row) => lines[rowAt(row)] ?? 0,
    width: (row) => (firsts[rowAt(row) + 1] ?? 0) - (firsts[rowAt(row)] ?? 0),
    cell,
    numbers: (column, rows) => {
      const values = new Float64Array(rows.length);
      for (let index = 0; index < rows.length; index++) {
        const row = rows[index] ?? 0;
        const at = chosen === null ? row : (chosen[row] ?? 0);
        const place = (firsts[at] ?? 0) + column;
        const next = firsts[at + 1] ?? 0;
        if (place >= next) {
          values[index] = Number.NaN;
          continue;
        }
        const end = place + 1 < next ? (starts[place + 1] ?? 0) - 1 : (ends[at] ?? 0);
        const quick = plainNumber(text, starts[place] ?? 0, end);
        values[index] =
          quick === NO_NUMBER ? (readNumberCell(cell(row, column), delimiter) ?? NO_NUMBER) : quick;
      }
      return values;
    },
    each: (column, visit) => {
      const count = chosen === null ? places.rowCount : chosen.length;
      for (let row = 0; row < count; row++) {
        const at = rowAt(row);
        const place = (firsts[at] ?? 0) + column;
        if (place < (firsts[at + 1] ?? 0)) visit(text, from(place), to(at, place), row);
        else visit("", 0, 0, row);
      }
    },
    sameRow: (one, other) => {
      const [a, b] = [rowAt(one), rowAt(other)];
      return (
        text.slice(from(firsts[a] ?? 0), ends[a] ?? 0) === text.slice(from(firsts[b] ?? 0), ends[b] ?? 0)
      );
    },
    pick: (rows) => textCells(text, delimiter, places, Uint32Array.from(rows, rowAt)),
  };
}

function placesIn(text: string, delimiter: number): Places {
  const { length } = text;
  // Grown where needed; a logger's cell has five characters or so, its row fifty.
  let starts = new Uint32Array(Math.ceil(length / 4) + 16);
  let firsts = new Uint32Array(Math.ceil(length / 32) + 16);
  let ends = new Uint32Array(firsts.length);
  let lines = new Uint32Array(firsts.length);
  let [line, rowCount, cellCount, at] = [0, 0, 0, 0];
  while (at <= length) {
    line++;
    const begin = at;
    const before = cellCount;
    let hasInk = false;
    let code = 0;
    if (cellCount + 1 >= starts.length) starts = larger(starts);
    starts[cellCount++] = at;
    for (; at < length; at++) {
      code = text.charCodeAt(at);
      if (code === delimiter) {
        if (cellCount >= starts.length) starts = larger(starts);
        starts[cellCount++] = at + 1;
      } else if (code <= BLANK) {
        if (code === LINE_FEED || code === RETURN) break;
      } else if (code < DELETE) hasInk = true;
    }
    // "Blank" is what trim() takes away, which is more than the space.
    if (hasInk || text.slice(begin, at).trim() !== "") {
      if (rowCount + 1 >= firsts.length)
        [firsts, ends, lines] = [larger(firsts), larger(ends), larger(lines)];
      firsts[rowCount] = before;
      ends[rowCount] = at;
      lines[rowCount] = line;
      rowCount++;
    } else cellCount = before;
    at += code === RETURN && at < length && text.charCodeAt(at + 1) === LINE_FEED ? 2 : 1;
  }
  firsts[rowCount] = cellCount;
  return { starts, firsts, ends, lines, rowCount };
}

function larger(list: Uint32Array<ArrayBuffer>): Uint32Array<ArrayBuffer> {
  const grown = new Uint32Array(2 * list.length);
  grown.set(list);
  return grown;
}

/**
 * The number of a cell written in at most 15 digits with a point or none: then whole number and power of ten are exact
 * and their quotient is what Number() gives (Clinger 1990). NaN for an empty cell, {@link NO_NUMBER} for anything else.
 */
function plainNumber(text: string, from: number, to: number): number {
  if (from === to) return Number.NaN;
  let at = from;
  const negative = text.charCodeAt(at) === MINUS;
  if (negative) at++;
  let whole = 0;
  let digits = 0;
  let places = 0;
  let seenPoint = false;
  for (; at < to; at++) {
    const code = text.charCodeAt(at);
    if (code >= ZERO && code <= NINE) {
      whole = whole * 10 + (code - ZERO);
      digits++;
      if (seenPoint) places++;
    } else if (code === POINT && !seenPoint) seenPoint = true;
    else return NO_NUMBER;
  }
  if (digits === 0 || digits > MOST_DIGITS) return NO_NUMBER;
  const value = whole / (TENTHS[places] ?? 1);
  return negative ? -value : value;
}
