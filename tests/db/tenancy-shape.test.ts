import type { Client } from "pg";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Table, tenantTables } from "../support/catalog";
import { connect } from "../support/connect";

const OWN = "(tenant_id = (NULLIF(current_setting('app.tenant'::text, true), ''::text))::uuid)";

let client: Client;
let tables: readonly Table[];

beforeAll(async () => {
  client = await connect();
  tables = await tenantTables(client);
});
afterAll(() => client.end());

test("the catalog is read at all", () => {
  const names = tables.map((table) => table.name);
  expect(names).toEqual(expect.arrayContaining(["job", "stage_record", "activity", "log_day", "membership"]));
});

test("every table without a company is one of the few that have none by design", async () => {
  const { rows } = await client.query(
    `SELECT relname AS name FROM pg_class c WHERE relnamespace = 'public'::regnamespace AND relkind IN ('r', 'p')
     AND NOT EXISTS (SELECT FROM pg_attribute a WHERE a.attrelid = c.oid AND a.attname = 'tenant_id')
     ORDER BY relname`,
  );
  const names = rows.map((row) => row.name);
  expect(names).toEqual(["_prisma_migrations", "password_reset", "rate_limit", "tenant", "user"]);
});

test("row-level security is enabled and forced on every table of a company and on the company itself", async () => {
  const names = [...tables.map((table) => table.name), "tenant"];
  const { rows } = await client.query(
    "SELECT relname FROM pg_class WHERE relname = ANY($1) AND NOT (relrowsecurity AND relforcerowsecurity)",
    [names],
  );
  expect(rows).toEqual([]);
});

test("what app_user may see and write is decided by the company alone", async () => {
  const { rows } = await client.query(
    `SELECT tablename, permissive, cmd, qual, with_check FROM pg_policies
     WHERE schemaname = 'public' AND roles && ARRAY['app_user', 'public']::name[]`,
  );
  const expected = tables.map((table) => ({
    tablename: table.name,
    permissive: "PERMISSIVE",
    cmd: "ALL",
    qual: OWN,
    with_check: OWN,
  }));
  const ofCompany = {
    permissive: "PERMISSIVE",
    cmd: "ALL",
    qual: OWN.replace("tenant_id", "id"),
    with_check: OWN.replace("tenant_id", "id"),
  };
  const sorted = (list: readonly { readonly tablename: string }[]) =>
    list.toSorted((a, b) => a.tablename.localeCompare(b.tablename));
  expect(sorted(rows)).toEqual(sorted([...expected, { tablename: "tenant", ...ofCompany }]));
});

test("primary keys, unique keys and indexes begin with the company", async () => {
  const wrong = tables.filter((table) => table.primaryKey[0] !== "tenant_id").map((table) => table.name);
  expect(wrong).toEqual([]);
  const unique = tables.flatMap((table) =>
    table.uniqueKeys.filter((key) => key[0] !== "tenant_id").map((key) => `${table.name} ${key}`),
  );
  expect(unique).toEqual([]);
  const { rows } = await client.query(
    `SELECT indrelid::regclass::text || ' ' || indexrelid::regclass::text AS index FROM pg_index i
     WHERE indrelid::regclass::text = ANY($1) AND NOT EXISTS (
       SELECT FROM pg_attribute a WHERE a.attrelid = i.indrelid AND a.attnum = i.indkey[0] AND a.attname = 'tenant_id')`,
    [tables.map((table) => table.name)],
  );
  // The parts of words carry the company in themselves. Sign-in asks for a person's companies before one is known.
  expect(rows.map((row) => row.index).toSorted()).toEqual([
    "job job_search_parts_idx",
    "membership membership_user_id_idx",
  ]);
});

test("a link between tables of companies carries the company on both sides", () => {
  const owned = new Set(tables.map((table) => table.name));
  const wrong = tables.flatMap((table) =>
    table.foreignKeys
      .filter((key) => owned.has(key.target))
      .filter((key) => key.columns.indexOf("tenant_id") !== 0 || key.targetColumns.indexOf("tenant_id") !== 0)
      .map((key) => key.name),
  );
  expect(wrong).toEqual([]);
});

test("every id that names another row is a link, save those that name no one table", () => {
  const loose = tables.flatMap((table) =>
    table.columns
      .filter((column) => column.type === "uuid" && column.name !== "id" && column.name !== "client_id")
      .filter((column) => !table.foreignKeys.some((key) => key.columns.includes(column.name)))
      .map((column) => `${table.name}.${column.name}`),
  );
  // Groups of versions, and entities of any kind.
  expect(loose).toEqual([
    "activity.entity_id",
    "control_model.family_id",
    "equipment_model.family_id",
    "job_fact.equipment_family_id",
    "sync_receipt.entity_id",
  ]);
});

test("every company row hangs on its company, so that none is left when it goes", () => {
  const parents = new Map(
    tables.map((table) => [
      table.name,
      table.foreignKeys.filter((key) =>
        key.columns.every((name) => table.columns.some((column) => column.name === name && !column.nullable)),
      ),
    ]),
  );
  const hangs = (name: string): boolean =>
    name === "tenant" || (parents.get(name) ?? []).some((key) => hangs(key.target));
  expect(tables.map((table) => table.name).filter((name) => !hangs(name))).toEqual([]);
});

test("the application's roles can neither sign in, nor bypass row-level security, nor own a table", async () => {
  const { rows } = await client.query(
    `SELECT rolname, rolsuper OR rolbypassrls OR rolcanlogin OR rolcreaterole OR rolcreatedb AS mighty,
       EXISTS (SELECT FROM pg_class WHERE relowner = r.oid AND relkind IN ('r', 'p')) AS owns
     FROM pg_roles r WHERE rolname LIKE 'app\\_%' ORDER BY rolname`,
  );
  expect(rows).toEqual(
    ["app_eraser", "app_search", "app_unscoped", "app_user"].map((rolname) => ({
      rolname,
      mighty: false,
      owns: false,
    })),
  );
  const owner = await client.query(
    "SELECT rolsuper OR rolbypassrls AS mighty FROM pg_roles WHERE rolname = current_user",
  );
  expect(owner.rows).toEqual([{ mighty: false }]);
});

test("app_unscoped reaches the tables of sign-in, links and tokens, and nothing else", async () => {
  const { rows } = await client.query(
    `SELECT table_name AS name, string_agg(DISTINCT privilege_type, ' ' ORDER BY privilege_type) AS may
     FROM information_schema.column_privileges WHERE grantee = 'app_unscoped' GROUP BY table_name ORDER BY table_name`,
  );
  expect(Object.fromEntries(rows.map((row) => [row.name, row.may]))).toEqual({
    api_token: "SELECT UPDATE",
    brand: "SELECT",
    invitation: "SELECT UPDATE",
    membership: "INSERT SELECT UPDATE",
    packet: "SELECT",
    packet_share: "SELECT UPDATE",
    password_reset: "INSERT SELECT UPDATE",
    rate_limit: "INSERT SELECT UPDATE",
    tenant: "INSERT SELECT",
    user: "INSERT SELECT UPDATE",
  });
});

test("no table lets a number that is not finite in", async () => {
  const open = tables
    .filter((table) => table.columns.some((column) => column.type === "double precision"))
    .flatMap((table) =>
      table.columns
        .filter((column) => column.type === "double precision")
        .filter((column) => !table.checks.some((check) => check.includes(`(${column.name} < 'Infinity'`)))
        .map((column) => `${table.name}.${column.name}`),
    );
  expect(open).toEqual([]);
});
