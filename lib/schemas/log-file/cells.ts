import { readNumberCell } from "./cell-number";
import { type Places, placesIn } from "./cell-places";
import type { Delimiter } from "./delimiter";
import { NO_NUMBER, plainNumber } from "./plain-number";
import { partOf } from "./text-codes";

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
  /** Visits a column from top to bottom: each cell is a part of a text in UTF-8, an empty one where it is not at hand. */
  readonly each: (
    column: number,
    visit: (text: Uint8Array, from: number, to: number, row: number) => void,
  ) => void;
  readonly sameRow: (one: number, other: number) => boolean;
  /** Some of the rows, in the order given. */
  readonly pick: (rows: Uint32Array) => Cells;
};

/** Cells of a text in UTF-8 without quotes: a line is a row. Lines of nothing but blanks are left out. */
export function cellsOfText(text: Uint8Array, delimiter: Delimiter): Cells {
  return textCells(text, placesIn(text, delimiter.charCodeAt(0)), delimiter, null);
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
    each: (_column, visit) => {
      for (let row = 0; row < rows.length; row++) visit(NOTHING, 0, 0, row);
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

const NOTHING = new Uint8Array();

function textCells(
  text: Uint8Array,
  places: Places,
  delimiter: Delimiter,
  chosen: Uint32Array | null,
): Cells {
  const { starts, firsts, ends, lines } = places;
  const rowAt = (row: number) => (chosen === null ? row : (chosen[row] ?? 0));
  const from = (cell: number) => starts[cell] ?? 0;
  const to = (row: number, cell: number) =>
    cell + 1 < (firsts[row + 1] ?? 0) ? (starts[cell + 1] ?? 0) - 1 : (ends[row] ?? 0);
  const cell = (row: number, column: number) => {
    const at = rowAt(row);
    const index = (firsts[at] ?? 0) + column;
    return index < (firsts[at + 1] ?? 0) ? partOf(text, from(index), to(at, index)) : "";
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
        else visit(NOTHING, 0, 0, row);
      }
    },
    sameRow: (one, other) => {
      const [a, b] = [rowAt(one), rowAt(other)];
      return (
        partOf(text, from(firsts[a] ?? 0), ends[a] ?? 0) === partOf(text, from(firsts[b] ?? 0), ends[b] ?? 0)
      );
    },
    pick: (rows) => {
      const picked = new Uint32Array(rows.length);
      for (let at = 0; at < rows.length; at++) picked[at] = rowAt(rows[at] ?? 0);
      return textCells(text, places, delimiter, picked);
    },
  };
}
