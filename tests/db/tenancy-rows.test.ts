import type { Client } from "pg";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { closeDatabase } from "@/lib/db/client";
import type { TenantScope } from "@/lib/domain/scope";
import { type Table, tenantTables } from "../support/catalog";
import { makeCompany } from "../support/companies";
import { connect, inRole, refusal } from "../support/connect";
import { linkColumn, type Row, rowFactory } from "../support/rows";

// Read once before the tests are named, so that a new table is tested without anyone thinking of it.
const client: Client = await connect();
const tables = await tenantTables(client);
const owned = new Set(tables.map((table) => table.name));
const factory = rowFactory(client, tables);

let theirs: TenantScope;
let ours: TenantScope;
const theirRows = new Map<string, Row>();

beforeAll(async () => {
  theirs = await makeCompany();
  ours = await makeCompany();
  for (const table of tables) theirRows.set(table.name, await makeOrFind(table, theirs));
});
afterAll(async () => {
  await client.end();
  await closeDatabase();
});

/** A row of the table in the company: the one it has, or a new one. */
async function makeOrFind(table: Table, scope: TenantScope): Promise<Row> {
  return inRole(client, "app_user", scope, async () => {
    const { rows } = await client.query(`SELECT * FROM "${table.name}" LIMIT 1`);
    return rows[0] ?? (await factory.insert(table, await factory.values(table, scope)));
  });
}

const theirRow = (table: Table): Row => theirRows.get(table.name) ?? {};
const keyOf = (table: Table, row: Row) => table.primaryKey.map((name) => row[name]);
const whereKey = (table: Table) =>
  table.primaryKey.map((name, place) => `"${name}" = $${place + 1}`).join(" AND ");

/** Their row as they see it now. */
async function asTheySeeIt(table: Table): Promise<unknown> {
  return inRole(client, "app_user", theirs, async () => {
    const { rows } = await client.query(
      `SELECT to_jsonb(t) AS row FROM "${table.name}" t WHERE ${whereKey(table)}`,
      keyOf(table, theirRow(table)),
    );
    return rows[0]?.row;
  });
}

describe.each(tables.map((table) => [table.name, table] as const))("%s", (_, table) => {
  const name = `"${table.name}"`;
  const asUs = <T>(work: () => Promise<T>) => inRole(client, "app_user", ours, work);
  const mayNot = ["0", "42501"];
  /** "0" when the statement touched nothing, else the code of the refusal. */
  const touched = async (sql: string, parameters: readonly unknown[]) => {
    let rows = -1;
    const code = await refusal(
      asUs(async () => {
        rows = (await client.query(sql, [...parameters])).rowCount ?? -1;
      }),
    );
    return code === "allowed" ? String(rows) : code;
  };

  test("they have a row to be protected, and see it", async () => {
    expect(await asTheySeeIt(table)).toBeTruthy();
  });

  test("their rows are not read, counted or found by id", async () => {
    const key = keyOf(table, theirRow(table));
    const found = await asUs(() => client.query(`SELECT FROM ${name} WHERE ${whereKey(table)}`, key));
    expect(found.rowCount).toBe(0);
    const foreign = await asUs(() =>
      client.query(`SELECT FROM ${name} WHERE tenant_id IS DISTINCT FROM $1`, [ours.tenantId]),
    );
    expect(foreign.rowCount).toBe(0);
  });

  test("their rows are not changed or removed", async () => {
    const before = await asTheySeeIt(table);
    const key = keyOf(table, theirRow(table));
    const column = table.columns.at(-1)?.name;
    expect(mayNot).toContain(
      await touched(`UPDATE ${name} SET "${column}" = "${column}" WHERE ${whereKey(table)}`, key),
    );
    expect(mayNot).toContain(await touched(`DELETE FROM ${name} WHERE ${whereKey(table)}`, key));
    expect(mayNot).toContain(await touched(`DELETE FROM ${name} WHERE tenant_id = $1`, [theirs.tenantId]));
    expect(await asTheySeeIt(table)).toEqual(before);
  });

  test("no row is added in their name, and none of ours is moved to them", async () => {
    const row = await asUs(async () =>
      factory.values(table, ours, table.name === "membership" ? { user_id: ours.userId } : {}),
    );
    expect(await refusal(asUs(() => factory.insert(table, { ...row, tenant_id: theirs.tenantId })))).toBe(
      "42501",
    );
    await makeOrFind(table, ours);
    expect(["42501", "DW001"]).toContain(
      await refusal(asUs(() => client.query(`UPDATE ${name} SET tenant_id = $1`, [theirs.tenantId]))),
    );
  });

  test("their ids and unique values are free for us: no refusal tells that they exist", async () => {
    const fresh = await makeCompany();
    // Everything but the links, which lead to parents of our own.
    const links = new Set(table.foreignKeys.flatMap((key) => key.columns));
    const copied = Object.entries(theirRow(table)).filter(
      ([column, value]) => !links.has(column) && column !== "tenant_id" && value !== null,
    );
    const plain = Object.fromEntries(
      copied.map(([column, value]) => [column, isJson(table, column) ? JSON.stringify(value) : value]),
    );
    const attempt = inRole(client, "app_user", fresh, async () => {
      // A company starts with its one membership.
      if (table.name === "membership") return client.query("UPDATE membership SET email = $1", [plain.email]);
      return factory.insert(table, await factory.values(table, fresh, plain));
    });
    expect(await refusal(attempt)).toBe("allowed");
  });

  test("with no company set nothing is visible and nothing is added", async () => {
    for (const role of ["app_user", "app_eraser", null] as const) {
      const seen = await inRole(client, role, null, () => client.query(`SELECT FROM ${name}`));
      expect(seen.rowCount).toBe(0);
    }
    const row = await asUs(() =>
      factory.values(table, ours, table.name === "membership" ? { user_id: ours.userId } : {}),
    );
    expect(await refusal(inRole(client, "app_user", null, () => factory.insert(table, row)))).toBe("42501");
  });

  const links = table.foreignKeys.filter((key) => owned.has(key.target) && linkColumn(key) !== null);
  test.each(links.map((key) => [key.columns.join(", "), key] as const))(
    "%s cannot point to a row of theirs",
    async (_, key) => {
      const column = linkColumn(key) ?? "";
      const parent = theirRows.get(key.target) ?? {};
      const aimed = key.targetColumns.find((one) => one !== "tenant_id") ?? "";
      const fresh = await makeCompany();
      const link = () =>
        inRole(client, "app_user", fresh, async () =>
          factory.insert(table, await factory.values(table, fresh, { [column]: parent[aimed] })),
        );
      expect(await refusal(link())).toBe("23503");
    },
  );
});

function isJson(table: Table, column: string): boolean {
  return table.columns.some((one) => one.name === column && one.type === "jsonb");
}
