import { parse } from "csv-parse/browser/esm/sync";
import { type BlockRow, headingsOf, headOf, partsOf } from "./block-parts";
import { groupsDown } from "./groups-across";

/** A pasted block or a CSV taken apart. Rows keep the line they stood on, from 1, so that a refusal can name it. */
export type Block = {
  readonly headings: readonly string[];
  readonly rows: readonly BlockRow[];
  /** Lines among the rows that hold none: notes, titles, headings said again. */
  readonly leftOut: readonly BlockRow[];
};
export type { BlockRow };
export type BlockRefusal = { readonly kind: "refused"; readonly reason: string };

export const MOST_CHARACTERS = 2_000_000;
export const MOST_ROWS = 5_000;
export const MOST_COLUMNS = 60;

/** The column of what stands above each part of a block that holds several. */
export const TITLE_ABOVE = "Title above the rows";

/** Takes a block apart by tabs, semicolons or commas, whichever cuts most lines alike. */
export function readBlock(text: string): Block | BlockRefusal {
  if (text.length > MOST_CHARACTERS)
    return refuse("This is longer than two million characters. Paste one table at a time.");
  if (text.trim() === "")
    return refuse("There is nothing here. Copy the table with its headings and paste it.");
  if (text.includes("\u0000") || text.startsWith("PK\u0003\u0004"))
    return refuse("This is not text. Save the sheet as CSV, or copy its cells.");
  const delimiter = delimiterOf(text);
  if (delimiter === null)
    return refuse(
      "No columns were found: no line has tabs, semicolons or commas. Copy the cells from the spreadsheet.",
    );
  const found = cut(text, delimiter);
  if ("kind" in found) return found;
  const lines = found.filter(({ cells }) => cells.some((cell) => cell !== ""));
  const { head, begin } = headOf(lines);
  if (head.length === 0 || lines.length < 2)
    return refuse("Only one line was found. Copy the headings and the rows below them.");
  const width = Math.max(...lines.map(({ cells }) => cells.length));
  if (width > MOST_COLUMNS)
    return refuse(`The block has ${width} columns; ${MOST_COLUMNS} are the most that can be read.`);
  if (lines.length > MOST_ROWS)
    return refuse(
      `The block has ${lines.length} lines; ${MOST_ROWS} are the most. Paste one table at a time.`,
    );
  const { rows, titles, leftOut, otherTable } = partsOf(
    lines.slice(0, begin - head.length),
    head,
    lines.slice(begin),
  );
  if (otherTable !== null && rows.some(({ line }) => line > otherTable.line))
    return refuse(
      `Line ${otherTable.line} begins another table with other columns. Paste one table at a time.`,
    );
  if (rows.length === 0) return refuse("No rows were found below the headings. Copy the rows as well.");
  const titled = rows.map(({ line, cells }, at) => ({
    line,
    cells: [
      ...(titles === null ? [] : [titles[at] ?? ""]),
      ...Array.from({ length: width }, (_, index) => cells[index] ?? ""),
    ],
  }));
  const titledHead =
    titles === null
      ? head
      : head.map(({ line, cells }, at) => ({
          line,
          cells: [at === head.length - 1 ? TITLE_ABOVE : "", ...cells],
        }));
  const wide = width + (titles === null ? 0 : 1);
  const table = groupsDown(titledHead, titled, wide) ?? {
    headings: headingsOf(titledHead, wide),
    rows: titled,
  };
  if (table.rows.length > MOST_ROWS)
    return refuse(
      `The block makes ${table.rows.length} rows; ${MOST_ROWS} are the most. Paste one table at a time.`,
    );
  return { headings: uniqueHeadings(table.headings), rows: table.rows, leftOut };
}

function refuse(reason: string): BlockRefusal {
  return { kind: "refused", reason };
}

function cut(text: string, delimiter: string): readonly BlockRow[] | BlockRefusal {
  const rows: BlockRow[] = [];
  try {
    parse(text, {
      bom: true,
      delimiter,
      relax_column_count: true,
      relax_quotes: true,
      record_delimiter: ["\r\n", "\n", "\r"],
      // A pasted inch mark (0.5") must not open a quoted cell that swallows the block.
      ...(delimiter === "\t" && oddQuotes(text) ? { quote: false } : {}),
      on_record: (cells: string[], { lines }: { lines: number }) => {
        rows.push({ line: lines, cells: cells.map((cell) => cell.replaceAll(/\s+/g, " ").trim()) });
        return null;
      },
    });
  } catch {
    return refuse("The quotes in this block do not match. Save the sheet as CSV again, or copy its cells.");
  }
  return rows;
}

function oddQuotes(text: string): boolean {
  return (text.match(/"/g) ?? []).length % 2 === 1 || /\d"/.test(text);
}

function delimiterOf(text: string): string | null {
  const lines = text
    .slice(0, 100_000)
    .split(/\r\n|\n|\r/)
    .filter((line) => line.trim() !== "")
    .slice(0, 60);
  let best: { readonly delimiter: string; readonly often: number } | null = null;
  // A tab never stands inside a number, a comma may: in this order the safer one wins a tie.
  for (const delimiter of ["\t", ";", ","]) {
    const counts = new Map<number, number>();
    for (const line of lines) {
      const width = line.replaceAll(/"[^"]*"/g, "").split(delimiter).length;
      if (width > 1) counts.set(width, (counts.get(width) ?? 0) + 1);
    }
    const often = Math.max(0, ...counts.values());
    if (often > (best?.often ?? 0)) best = { delimiter, often };
  }
  return best?.delimiter ?? null;
}

/** Trimmed headings; unnamed and doubled ones get a number so that each can be mapped. */
function uniqueHeadings(cells: readonly string[]): readonly string[] {
  const seen = new Map<string, number>();
  return cells.map((cell, index) => {
    const name = cell.slice(0, 100) || `column ${index + 1}`;
    const times = (seen.get(name) ?? 0) + 1;
    seen.set(name, times);
    return times === 1 ? name : `${name} (${times})`;
  });
}
