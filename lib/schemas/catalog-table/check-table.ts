import type { FanRow, PerformanceRow } from "@/lib/domain/catalog";
import { refusedFanCells } from "./fan-laws";
import type { TableMapping } from "./mapping";
import { type DecimalSign, decimalSignOf, readNumberCell } from "./number-cell";
import { refusedPerformanceCells } from "./performance-laws";
import { quantitiesOf, type TableKind, type TableQuantity } from "./quantities";
import type { Block, BlockRow } from "./read-block";
import type { ReadRow, Refuse, RefusedCell } from "./refused-cell";
import { ourUnit, toOurUnit } from "./units";

export type CheckedTable = {
  readonly performance: readonly PerformanceRow[];
  readonly fan: readonly FanRow[];
  readonly refused: readonly RefusedCell[];
  /** Rows that can be kept. */
  readonly goodRows: number;
  readonly allRows: number;
};

type Values = Readonly<Record<string, string | number | null>>;

/**
 * Reads every cell and asks what must hold between cells and between rows. Rows without a refused cell are
 * kept; `existing` rows of the model count as already there.
 */
export function checkTable(
  kind: TableKind,
  block: Pick<Block, "headings" | "rows">,
  mapping: TableMapping,
  existing: { readonly performance: readonly PerformanceRow[]; readonly fan: readonly FanRow[] } = {
    performance: [],
    fan: [],
  },
): CheckedTable {
  const quantities = quantitiesOf(kind);
  const signs = new Map(
    quantities.map(({ key }) => [key, decimalSignOf(block.rows.map((row) => cellOf(row, key, mapping)))]),
  );
  // A table comes from one hand: a column whose own cells do not tell follows the others.
  // One without any decimals does not tell: then the quantity's range does.
  const common = decimalSignOf(block.rows.flatMap((row) => row.cells)) ?? "unclear";
  const refuse: Refuse = (row, quantity, reason, fix) => ({
    row,
    line: block.rows[row]?.line ?? 0,
    quantity,
    column: columnName(block, mapping, quantity, kind),
    text: block.rows[row] ? cellOf(block.rows[row], quantity, mapping) : "",
    reason,
    fix,
  });
  const refused: RefusedCell[] = [];
  const readable: ReadRow<Values>[] = [];
  for (const [index, row] of block.rows.entries()) {
    const faults: RefusedCell[] = [];
    const values: Record<string, string | number | null> = {};
    const heats = /^h/i.test(cellOf(row, "mode", mapping).trim());
    for (const quantity of quantities) {
      const needed = quantity.need === "always" || (quantity.need === "cooling" && !heats);
      const cell = cellOf(row, quantity.key, mapping);
      const sign = signs.get(quantity.key) ?? common;
      const read = readCell(quantity, cell, sign, mapping, { needed, heats });
      if (read.ok) values[quantity.key] = read.value;
      else faults.push(refuse(index, quantity.key, read.reason, read.fix));
    }
    refused.push(...faults);
    if (faults.length === 0) readable.push({ row: index, values });
  }
  const broken =
    kind === "performance"
      ? refusedPerformanceCells(readable.map(toPerformance), existing.performance, refuse)
      : refusedFanCells(readable.map(toFan), existing.fan, refuse);
  const bad = new Set(broken.map(({ row }) => row));
  const good = readable.filter(({ row }) => !bad.has(row));
  return {
    performance: kind === "performance" ? good.map((one) => toPerformance(one).values) : [],
    fan: kind === "fan" ? good.map((one) => toFan(one).values) : [],
    refused: [...refused, ...broken].sort((a, b) => a.row - b.row),
    goodRows: good.length,
    allRows: block.rows.length,
  };
}

export function cellOf(row: BlockRow, quantity: string, mapping: TableMapping): string {
  const mapped = mapping[quantity];
  if (mapped === undefined) return "";
  return mapped.column === null ? mapped.constant : (row.cells[mapped.column] ?? "");
}

function columnName(
  block: Pick<Block, "headings">,
  mapping: TableMapping,
  quantity: string,
  kind: TableKind,
): string {
  const column = mapping[quantity]?.column ?? null;
  const label = quantitiesOf(kind).find(({ key }) => key === quantity)?.label ?? quantity;
  return column === null ? label : (block.headings[column] ?? label);
}

type Read =
  | { readonly ok: true; readonly value: string | number | null }
  | { readonly ok: false; readonly reason: string; readonly fix: string };

function readCell(
  quantity: TableQuantity,
  cell: string,
  sign: DecimalSign,
  mapping: TableMapping,
  row: { readonly needed: boolean; readonly heats: boolean },
): Read {
  const { family, range, label } = quantity;
  if (family === null || range === null) return readWords(quantity, cell);
  const read = readNumberCell(cell, sign, family);
  if (read.kind === "refused") return { ok: false, reason: read.reason, fix: read.fix };
  if (read.kind === "empty") {
    return row.needed
      ? { ok: false, reason: `${label} is empty.`, fix: "Enter the maker's number, or leave the row out." }
      : { ok: true, value: null };
  }
  const unit = read.unit ?? mapping[quantity.key]?.unit ?? ourUnit(family);
  const [least, most] = row.heats || quantity.key !== "outdoorDbF" ? range : [40, range[1]];
  const possible = (read.kind === "number" ? [read.value] : read.values).map((one) =>
    toOurUnit(one, family, unit),
  );
  const [value = Number.NaN, other] = possible.filter((one) => one >= least && one <= most);
  if (Number.isFinite(value) && other === undefined) return { ok: true, value };
  if (read.kind === "two readings") return { ok: false, reason: read.reason, fix: read.fix };
  const ours = ourUnit(family);
  return {
    ok: false,
    reason: `${cell.trim()}${read.unit === null ? ` ${unit}` : ""} is ${(possible[0] ?? 0).toLocaleString("en-US", { maximumFractionDigits: 2 })} ${ours}: ${label.toLowerCase()} is from ${least.toLocaleString("en-US")} to ${most.toLocaleString("en-US")} ${ours}.`,
    fix: "Check the digits and the column's unit.",
  };
}

function readWords({ key, label }: TableQuantity, cell: string): Read {
  const text = cell.trim();
  if (text === "")
    return { ok: false, reason: `${label} is empty.`, fix: "Name it as the model's settings are named." };
  if (text.length > 100)
    return { ok: false, reason: `${label} is longer than 100 characters.`, fix: "Shorten it." };
  if (key !== "mode") return { ok: true, value: text };
  if (/^c/i.test(text)) return { ok: true, value: "cooling" };
  if (/^h/i.test(text)) return { ok: true, value: "heating" };
  return { ok: false, reason: `“${text.slice(0, 40)}” is no mode.`, fix: "Write cooling or heating." };
}

const number = (value: string | number | null | undefined) =>
  typeof value === "number" ? value : Number.NaN;
const numberOrNone = (value: string | number | null | undefined) =>
  typeof value === "number" ? value : null;

function toPerformance({ row, values }: ReadRow<Values>): ReadRow<PerformanceRow> {
  const mode = values.mode === "heating" ? "heating" : "cooling";
  return {
    row,
    values: {
      capacitySetting: String(values.capacitySetting),
      mode,
      outdoorDbF: number(values.outdoorDbF),
      enteringWbF: mode === "heating" ? null : numberOrNone(values.enteringWbF),
      enteringDbF: number(values.enteringDbF),
      airflowCfm: number(values.airflowCfm),
      totalBtuh: number(values.totalBtuh),
      sensibleBtuh: mode === "heating" ? null : numberOrNone(values.sensibleBtuh),
      powerW: numberOrNone(values.powerW),
    },
  };
}

function toFan({ row, values }: ReadRow<Values>): ReadRow<FanRow> {
  return {
    row,
    values: {
      airflowSetting: String(values.airflowSetting),
      externalStaticInWc: number(values.externalStaticInWc),
      airflowCfm: number(values.airflowCfm),
      powerW: numberOrNone(values.powerW),
    },
  };
}
