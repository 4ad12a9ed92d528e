import type { Client } from "pg";

export type Column = {
  readonly name: string;
  readonly type: string;
  readonly nullable: boolean;
  readonly hasDefault: boolean;
};
export type ForeignKey = {
  readonly name: string;
  readonly columns: readonly string[];
  readonly target: string;
  readonly targetColumns: readonly string[];
};
export type Table = {
  readonly name: string;
  readonly columns: readonly Column[];
  readonly primaryKey: readonly string[];
  readonly foreignKeys: readonly ForeignKey[];
  /** The columns of each unique index, the primary key's included. */
  readonly uniqueKeys: readonly (readonly string[])[];
  /** The definition of each check, as PostgreSQL prints it. */
  readonly checks: readonly string[];
};

/** Every table that belongs to companies, as the database itself describes it. */
export async function tenantTables(client: Client): Promise<readonly Table[]> {
  const { rows } = await client.query<{ name: string }>(
    `SELECT table_name AS name FROM information_schema.columns
     WHERE table_schema = 'public' AND column_name = 'tenant_id' ORDER BY table_name`,
  );
  const tables: Table[] = [];
  for (const row of rows) tables.push(await readTable(client, row.name));
  return tables;
}

async function readTable(client: Client, name: string): Promise<Table> {
  const of = [name];
  const columns = await client.query<Column>(
    `SELECT column_name AS name, data_type AS type, is_nullable = 'YES' AS nullable,
       column_default IS NOT NULL AS "hasDefault"
     FROM information_schema.columns WHERE table_schema = 'public' AND table_name = $1 ORDER BY ordinal_position`,
    of,
  );
  const keys = await client.query<{ primary: boolean; columns: string[] }>(
    `SELECT i.indisprimary AS primary,
       (SELECT array_agg(a.attname::text ORDER BY k.place) FROM unnest(i.indkey) WITH ORDINALITY AS k(number, place)
        JOIN pg_attribute a ON a.attrelid = i.indrelid AND a.attnum = k.number) AS columns
     FROM pg_index i WHERE i.indrelid = format('public.%I', $1::text)::regclass AND i.indisunique`,
    of,
  );
  const foreignKeys = await client.query<ForeignKey>(
    `SELECT c.conname::text AS name, t.relname::text AS target,
       (SELECT array_agg(a.attname::text ORDER BY k.place) FROM unnest(c.conkey) WITH ORDINALITY AS k(number, place)
        JOIN pg_attribute a ON a.attrelid = c.conrelid AND a.attnum = k.number) AS columns,
       (SELECT array_agg(a.attname::text ORDER BY k.place) FROM unnest(c.confkey) WITH ORDINALITY AS k(number, place)
        JOIN pg_attribute a ON a.attrelid = c.confrelid AND a.attnum = k.number) AS "targetColumns"
     FROM pg_constraint c JOIN pg_class t ON t.oid = c.confrelid
     WHERE c.contype = 'f' AND c.conrelid = format('public.%I', $1::text)::regclass ORDER BY c.conname`,
    of,
  );
  const checks = await client.query<{ definition: string }>(
    `SELECT pg_get_constraintdef(oid) AS definition FROM pg_constraint
     WHERE contype = 'c' AND conrelid = format('public.%I', $1::text)::regclass`,
    of,
  );
  return {
    name,
    columns: columns.rows,
    primaryKey: keys.rows.find((key) => key.primary)?.columns ?? [],
    foreignKeys: foreignKeys.rows,
    uniqueKeys: keys.rows.map((key) => key.columns),
    checks: checks.rows.map((row) => row.definition),
  };
}

/** The words a check allows in a text column, or null when no check lists words for it. */
export function wordsOf(table: Table, column: string): readonly string[] | null {
  const list = table.checks.find((check) => check.includes(`(${column} = ANY (ARRAY[`));
  if (!list) return null;
  return [...list.matchAll(/'((?:[^']|'')*)'::text/g)].map((found) => (found[1] ?? "").replaceAll("''", "'"));
}
