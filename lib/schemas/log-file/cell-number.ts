import type { Delimiter } from "./delimiter";

const NOTHING = new Set(["", "-", "--", "na", "n/a", "nan", "null", "none", "#n/a"]);
const ON = new Set(["on", "true", "yes"]);
const OFF = new Set(["off", "false", "no"]);

/** The number in a cell: NaN when the cell is empty or says there is none, undefined when it is something else. */
export function readNumberCell(cell: string, delimiter: Delimiter): number | undefined {
  const quick = cell.length > 0 ? Number(cell) : Number.NaN;
  // A cell of blanks alone is 0 to Number().
  if (Number.isFinite(quick) && (quick !== 0 || cell.trim() !== "")) return quick;
  const words = cell.trim().toLowerCase();
  if (NOTHING.has(words)) return Number.NaN;
  if (ON.has(words)) return 1;
  if (OFF.has(words)) return 0;
  if (delimiter !== "," && /^[+-]?\d+,\d+$/.test(words)) return Number(words.replace(",", "."));
  return undefined;
}

/** The same, with NaN for anything that is no number. */
export function cellNumber(cell: string, delimiter: Delimiter): number {
  return readNumberCell(cell, delimiter) ?? Number.NaN;
}
