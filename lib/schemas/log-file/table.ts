import { parse } from "csv-parse/sync";
import { type Cells, cellsOfRows, cellsOfText } from "./cells";
import { readDateCell } from "./date-cell";
import { DELIMITERS, type Delimiter } from "./delimiter";
import { partOf } from "./text-codes";
import { type FileRefusal, refuse } from "./text-of-file";

/** A text taken apart: headings and rows, each row with its line number in the file (from 1). */
export type Table = {
  readonly delimiter: Delimiter;
  readonly headings: readonly string[];
  readonly cells: Cells;
};

/** A cell of a line of units below the headings. */
const UNIT_CELL = /^[([]?(°?\s?[CF]|deg\.? ?[CF]|%( ?RH)?|s|sec|seconds|min|minutes|)[)\]]?$/i;

const QUOTE = 34;
const LINE_FEED = 10;
const RETURN = 13;
/** Such rows are lists of strings, at ten times the bytes. */
const MOST_QUOTED_BYTES = 15_000_000;

/** The library makes an error of each line that is not as wide as the first, only to forget it: 10 µs each. */
const MOST_RAGGED = 200_000;
const RAGGED = `Cells of this file hold quotes, and more than ${MOST_RAGGED.toLocaleString("en-US")} lines have another number of columns than the first. Leave out the lines above the headings, or the quotes.`;

/** Lines looked at to find the delimiter. */
const LOOK = 60;
/** An exporter's remarks above the headings are a page at most, a logger's columns a few dozen. */
const MOST_LINES_ABOVE = 1_000;
const MOST_COLUMNS = 1_000;

/** Takes a text in UTF-8 apart, or says why it is no table. */
export function tableOf(text: Uint8Array): Table | FileRefusal {
  const start = partOf(text, 0, 100_000).split(/\r\n|\n|\r/, LOOK);
  const delimiter = delimiterOf(start);
  if (delimiter === null) {
    return refuse(
      "no table",
      "No columns were found: no line has commas, semicolons or tabs. Choose the log's CSV file.",
    );
  }
  const cells = cutRows(text, delimiter);
  if ("kind" in cells) return cells;
  const first = firstDated(cells);
  if (first === -1) {
    return refuse("no table", "No line with a date was found. A log needs a column with date and time.");
  }
  for (let row = 0; row <= first; row++) {
    if (cells.width(row) <= MOST_COLUMNS) continue;
    const line = cells.line(row);
    return refuse(
      "no table",
      `Line ${line} has ${cells.width(row).toLocaleString("en-US")} columns; ${MOST_COLUMNS.toLocaleString("en-US")} are the most. Export the log again.`,
    );
  }
  const above = Array.from({ length: first }, (_, row) => rowOf(cells, row));
  return {
    delimiter,
    headings: headingsAbove(above, cells.width(first)),
    cells: cells.pick(rowsFrom(first, cells.rowCount)),
  };
}

function rowsFrom(first: number, end: number): Uint32Array {
  const rows = new Uint32Array(end - first);
  for (let at = 0; at < rows.length; at++) rows[at] = first + at;
  return rows;
}

/** A row's cells as written. */
export function rowOf(cells: Cells, row: number): readonly string[] {
  return Array.from({ length: cells.width(row) }, (_, column) => cells.cell(row, column));
}

function firstDated(cells: Cells): number {
  for (let row = 0; row < Math.min(cells.rowCount, MOST_LINES_ABOVE); row++) {
    for (let column = 0; column < Math.min(cells.width(row), MOST_COLUMNS); column++) {
      if (readDateCell(cells.cell(row, column)) !== null) return row;
    }
  }
  return -1;
}

/** The headings are the last line above the data that is as wide; lines above it are the exporter's remarks. */
function headingsAbove(rows: readonly (readonly string[])[], width: number): readonly string[] {
  const above = rows.filter((cells) => cells.length >= Math.max(2, width - 1));
  const last = above.at(-1) ?? [];
  const before = above.at(-2);
  const isUnits = before !== undefined && last.every((cell) => UNIT_CELL.test(cell.trim()));
  return headingsOf(
    isUnits ? before.map((name, index) => `${name} ${last[index]?.trim() ?? ""}`.trim()) : last,
    width,
  );
}

function cutRows(text: Uint8Array, delimiter: Delimiter): Cells | FileRefusal {
  const plain = withoutNeedlessQuotes(text, delimiter.charCodeAt(0));
  // Without quotes a line is a row and csv-parse has nothing to decide.
  if (!plain.includes(QUOTE)) return cellsOfText(plain, delimiter);
  if (text.length > MOST_QUOTED_BYTES) {
    return refuse(
      "too large",
      `Cells of this file hold quotes or line ends, which is read up to ${MOST_QUOTED_BYTES / 1_000_000} MB. Export it in parts, or without them.`,
    );
  }
  const rows: string[][] = [];
  const lines: number[] = [];
  let ragged = 0;
  try {
    parse(partOf(text, 0, text.length), {
      delimiter,
      relax_column_count: true,
      skip_empty_lines: true,
      relax_quotes: true,
      on_record: (cells: string[], { lines: line }: { lines: number }) => {
        if (cells.length !== rows[0]?.length && rows.length > 0) ragged++;
        if (ragged > MOST_RAGGED) throw new Error(RAGGED);
        rows.push(cells);
        lines.push(line);
        return null;
      },
    });
  } catch (error) {
    if (ragged > MOST_RAGGED) return refuse("too large", RAGGED);
    const said = error instanceof Error ? error.message : "unknown fault";
    return refuse(
      "no table",
      `The file's quotes do not match (${said.slice(0, 120)}). Export the log again.`,
    );
  }
  return cellsOfRows(rows, lines, delimiter);
}

/** Takes away quotes around whole cells that hold no delimiter, quote or line end: there they mean nothing. */
function withoutNeedlessQuotes(text: Uint8Array, delimiter: number): Uint8Array {
  if (!text.includes(QUOTE)) return text;
  const isEdge = (code: number | undefined) =>
    code === undefined || code === delimiter || code === LINE_FEED || code === RETURN;
  const plain = new Uint8Array(text.length);
  let size = 0;
  for (let at = 0; at < text.length; at++) {
    const code = text[at] ?? 0;
    if (code === QUOTE && isEdge(text[at - 1])) {
      let end = at + 1;
      while (text[end] !== QUOTE && !isEdge(text[end])) end++;
      if (text[end] === QUOTE && isEdge(text[end + 1])) {
        plain.set(text.subarray(at + 1, end), size);
        size += end - at - 1;
        at = end;
        continue;
      }
    }
    plain[size++] = code;
  }
  return plain.subarray(0, size);
}

/** The delimiter that cuts most of the first lines into the same number of columns. */
function delimiterOf(lines: readonly string[]): Delimiter | null {
  let best: { readonly delimiter: Delimiter; readonly score: number } | null = null;
  for (const delimiter of DELIMITERS) {
    const counts = new Map<number, number>();
    for (const line of lines) {
      const count = line.replace(/"[^"]*"/g, "").split(delimiter).length;
      if (count > 1) counts.set(count, (counts.get(count) ?? 0) + 1);
    }
    const [width, often] = [...counts].sort((a, b) => b[1] - a[1] || b[0] - a[0])[0] ?? [0, 0];
    // How many lines agree counts first, then how many columns they have.
    const score = often * 1_000 + width;
    if (often > 0 && (best === null || score > best.score)) best = { delimiter, score };
  }
  return best?.delimiter ?? null;
}

/** Trimmed headings; unnamed and doubled ones get a number so that each can be mapped. */
function headingsOf(cells: readonly string[], width: number): readonly string[] {
  const seen = new Map<string, number>();
  return Array.from({ length: Math.max(width, cells.length) }, (_, index) => {
    const name = cells[index]?.trim() || `column ${index + 1}`;
    const times = (seen.get(name) ?? 0) + 1;
    seen.set(name, times);
    return times === 1 ? name : `${name} (${times})`;
  });
}
