import { readFileSync } from "node:fs";

const read = (name: string) =>
  readFileSync(new URL(`../../../seed/weather/${name}`, import.meta.url), "utf8");

export const houston = read("houston-2a.epw");
export const indianapolis = read("indianapolis-tmy3.epw");

/** The file with one cell of one row (both from 1) replaced. */
export function withCell(text: string, row: number, column: number, value: string): string {
  const lines = text.split("\n");
  const cells = (lines[row - 1] ?? "").split(",");
  cells[column - 1] = value;
  lines[row - 1] = cells.join(",");
  return lines.join("\n");
}

/** The raw numbers of one column, by plain splitting. */
export function rawColumn(text: string, column: number): number[] {
  const rows = text.trim().split("\n").slice(8);
  return rows.map((line) => Number(line.split(",")[column - 1]));
}
