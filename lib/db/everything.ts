import type { TenantScope } from "@/lib/domain/scope";
import { Prisma } from "./generated/client";
import { type TenantTransaction, withTenant } from "./with-tenant";

const BATCH = 500;
const LONGEST_MS = 30 * 60_000;
/** What opens a door is in nobody's hands but the database's. */
const SECRETS = ["token_hash", "secret_sealed"];

export type ExportedTable = {
  readonly name: string;
  readonly columns: readonly string[];
};

type Column = { readonly table: string; readonly column: string; readonly type: string };

/**
 * Reads every row of the company, all as of one moment, without what opens a door (hashes of tokens and links,
 * sealed secrets).
 *
 * @param take - Called for each table with its rows as texts in the order of its columns; instants are ISO 8601
 *   in UTC, lists and objects JSON, bytes base64; an empty value is `null`.
 * @returns The names and the number of rows of each table.
 */
export function readEverything(
  scope: TenantScope,
  take: (table: ExportedTable, rows: AsyncIterable<readonly (readonly (string | null)[])[]>) => Promise<void>,
): Promise<ReadonlyMap<string, number>> {
  return withTenant(
    scope,
    async (tx) => {
      const counts = new Map<string, number>();
      for (const [name, columns] of await tablesOf(tx)) {
        counts.set(name, 0);
        await take(
          { name, columns: columns.map((one) => one.column) },
          batchesOf(tx, scope, name, columns, (more) => counts.set(name, (counts.get(name) ?? 0) + more)),
        );
      }
      return counts;
    },
    { isolation: "RepeatableRead", timeoutMs: LONGEST_MS },
  );
}

/** All tables of companies with their columns, as the database itself describes them. */
async function tablesOf(tx: TenantTransaction): Promise<ReadonlyMap<string, readonly Column[]>> {
  const columns = await tx.$queryRaw<Column[]>`
    SELECT c.relname::text AS "table", a.attname::text AS "column", format_type(a.atttypid, NULL) AS "type"
    FROM pg_class c JOIN pg_attribute a ON a.attrelid = c.oid AND a.attnum > 0 AND NOT a.attisdropped
    WHERE c.relnamespace = 'public'::regnamespace AND c.relkind IN ('r', 'p')
      AND EXISTS (SELECT 1 FROM pg_attribute own WHERE own.attrelid = c.oid AND own.attname = 'tenant_id')
      AND a.attname <> 'tenant_id' AND has_column_privilege(c.oid, a.attnum, 'SELECT')
    ORDER BY c.relname, a.attnum`;
  const tables = new Map<string, Column[]>();
  for (const one of columns) {
    if (SECRETS.includes(one.column)) continue;
    tables.set(one.table, [...(tables.get(one.table) ?? []), one]);
  }
  return tables;
}

async function* batchesOf(
  tx: TenantTransaction,
  scope: TenantScope,
  table: string,
  columns: readonly Column[],
  counted: (rows: number) => void,
): AsyncGenerator<readonly (readonly (string | null)[])[]> {
  const list = columns.map(asText).join(", ");
  await tx.$executeRaw`DECLARE everything NO SCROLL CURSOR FOR
    SELECT ARRAY[${Prisma.raw(list)}] AS cells FROM ${Prisma.raw(`"${table}"`)}
    WHERE tenant_id = ${scope.tenantId}::uuid`;
  for (;;) {
    const rows = await tx.$queryRaw<
      { cells: (string | null)[] }[]
    >`FETCH ${Prisma.raw(String(BATCH))} FROM everything`;
    if (rows.length === 0) break;
    counted(rows.length);
    yield rows.map((row) => row.cells);
  }
  await tx.$executeRaw`CLOSE everything`;
}

/** Names and types come from the database's own catalog, never from outside. */
function asText({ column, type }: Column): string {
  const name = `"${column}"`;
  if (type === "timestamp with time zone")
    return `to_char(${name} AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"')`;
  if (type === "bytea") return `encode(${name}, 'base64')`;
  if (type.endsWith("[]")) return `to_jsonb(${name})::text`;
  return `${name}::text`;
}
