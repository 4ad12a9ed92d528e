import { randomUUID } from "node:crypto";
import type { Client } from "pg";
import type { TenantScope } from "@/lib/domain/scope";
import { type Column, type ForeignKey, type Table, wordsOf } from "./catalog";

export type Row = Readonly<Record<string, unknown>>;

/** What no type or check tells: the day's channels are one sample long; a first revision needs no reason. */
const KNOWN: Readonly<Record<string, Row>> = {
  log_day: { samples: 1 },
  stage_record: { revision: 1 },
};

/** Columns that a check allows only together. */
const TOGETHER: Readonly<Record<string, Row>> = {
  "held_value.decided_by": { state: "taken", decided_at: new Date() },
  "stage_record.signed_by": { state: "signed", signed_at: new Date(), signature_name: "A. Tech" },
};

let count = 0;

/**
 * Makes rows for any table of a company from the catalog alone: required columns by type and checks,
 * required parents first. The transaction must already be the company's.
 */
export function rowFactory(client: Client, tables: readonly Table[]) {
  const byName = new Map(tables.map((table) => [table.name, table]));

  async function values(table: Table, scope: TenantScope, given: Row = {}): Promise<Row> {
    const implied = Object.keys(given).map((column) => TOGETHER[`${table.name}.${column}`] ?? {});
    const row: Record<string, unknown> = { tenant_id: scope.tenantId, ...KNOWN[table.name] };
    Object.assign(row, ...implied, given);
    for (const key of table.foreignKeys) {
      const column = linkColumn(key);
      if (column === null || column in row || isOptional(table, column)) continue;
      row[column] = await parentOf(key, scope);
    }
    for (const column of table.columns) {
      if (column.name in row || column.nullable || (column.hasDefault && column.name !== "id")) continue;
      row[column.name] = valueFor(table, column);
    }
    return row;
  }

  async function parentOf(key: ForeignKey, scope: TenantScope): Promise<unknown> {
    if (key.target === "membership") return scope.userId;
    const parent = byName.get(key.target);
    const column = key.targetColumns.find((name) => name !== "tenant_id");
    if (!parent || !column) throw new Error(`No rows can be made for ${key.target}.`);
    return (await insert(parent, await values(parent, scope)))[column];
  }

  async function insert(table: Table, row: Row): Promise<Row> {
    const names = Object.keys(row);
    const text = `INSERT INTO "${table.name}" (${names.map((name) => `"${name}"`).join(", ")})
      VALUES (${names.map((_, place) => `$${place + 1}`).join(", ")}) RETURNING *`;
    const { rows } = await client.query(text, Object.values(row));
    return rows[0];
  }

  return { values, insert };
}

/** The column of a foreign key that chooses the parent, or null for the link to the company itself. */
export function linkColumn(key: ForeignKey): string | null {
  return key.columns.find((name) => name !== "tenant_id") ?? null;
}

function isOptional(table: Table, column: string): boolean {
  return table.columns.some((one) => one.name === column && one.nullable);
}

function valueFor(table: Table, column: Column): unknown {
  const number = ++count;
  switch (column.type) {
    case "uuid":
      return randomUUID();
    case "text":
      return textFor(table, column.name, number);
    case "integer":
    case "bigint":
      return number;
    case "double precision":
      return number + 0.5;
    case "boolean":
      return false;
    case "jsonb":
      return "{}";
    case "date":
      return new Date(Date.UTC(2026, 0, number)).toISOString().slice(0, 10);
    case "timestamp with time zone":
      return new Date(Date.UTC(2026, 0, 1, number));
    case "bytea":
      return Buffer.alloc(8);
    default:
      throw new Error(`The row factory knows no ${column.type} (${table.name}.${column.name}).`);
  }
}

function textFor(table: Table, column: string, number: number): string {
  const words = wordsOf(table, column);
  if (words) return words[0] ?? "";
  const pattern = table.checks
    .map((check) => new RegExp(`\\(${column} ~ '([^']*)'`).exec(check)?.[1])
    .find((found) => found !== undefined);
  if (pattern === undefined) return `text ${number}`;
  const hex = number.toString(16);
  const fitting = [`#${hex.padStart(6, "0")}`, hex.padStart(64, "0")].find((text) =>
    new RegExp(pattern).test(text),
  );
  if (fitting === undefined) throw new Error(`The row factory knows no text for ${table.name}.${column}.`);
  return fitting;
}
