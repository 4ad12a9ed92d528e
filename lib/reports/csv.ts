import { stringify } from "csv-stringify/sync";

/** What a cell of an exported table may hold. */
export type CsvCell = string | number | boolean | null;

/**
 * A table as CSV (RFC 4180) with a byte order mark, so that spreadsheets read it as UTF-8.
 * Text that a spreadsheet would run as a formula (it begins with = + - @ tab or return) is led by an apostrophe;
 * numbers stay numbers. An unknown value is an empty cell. Without a head it continues a table already begun.
 */
export function csvText(head: readonly string[], rows: readonly (readonly CsvCell[])[]): string {
  const begins = head.length > 0;
  return stringify((begins ? [head, ...rows] : rows) as CsvCell[][], {
    bom: begins,
    record_delimiter: "windows",
    escape_formulas: true,
    cast: {
      boolean: (value) => (value ? "yes" : "no"),
      // A negative number is no formula.
      number: (value) => ({ value: String(value), escape_formulas: false }),
    },
  });
}
