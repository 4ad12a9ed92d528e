/**
 * Writes the next migration: the difference between the committed migrations, replayed on an empty
 * in-memory database, and schema.prisma. Read the SQL before committing it.
 *
 *     npx tsx prisma/new-migration.ts add_drain_photo
 *     npx tsx prisma/new-migration.ts backfill_photo --empty
 *
 * A migration that makes or changes tables ends with table-guards.sql, so that no table of a company
 * is ever deployed unguarded.
 */
import { mkdir, readdir, readFile, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { PGlite } from "@electric-sql/pglite";
import { btree_gin } from "@electric-sql/pglite/contrib/btree_gin";
import { pg_trgm } from "@electric-sql/pglite/contrib/pg_trgm";
import { bindMigrationAwareSqlAdapterFactory } from "@prisma/driver-adapter-utils";
import type { MigrationDirectory, SchemaEngine } from "@prisma/schema-engine-wasm";
import { PrismaPGlite } from "pglite-prisma-adapter";

const HERE = path.dirname(fileURLToPath(import.meta.url));
const MIGRATIONS = path.join(HERE, "migrations");
const NOTHING_TO_DO = "-- This is an empty migration.";

/** The SQL that leads from the committed migrations to the schema; empty when they agree. */
export async function migrationSql(schemaPath = path.join(HERE, "schema.prisma")): Promise<string> {
  const datamodel = await readFile(schemaPath, "utf8");
  const engine = await startEngine(schemaPath, datamodel);
  try {
    const noFilter = { externalTables: [], externalEnums: [] };
    const { stdout } = await engine.diff({
      from: {
        tag: "migrations",
        baseDir: MIGRATIONS,
        lockfile: { path: "migration_lock.toml", content: 'provider = "postgresql"\n' },
        shadowDbInitScript: "",
        migrationDirectories: await committedMigrations(),
      },
      to: { tag: "schemaDatamodel", files: [{ path: schemaPath, content: datamodel }] },
      script: true,
      exitCode: null,
      filters: noFilter,
    });
    const sql = stdout ?? "";
    return sql.trim() === NOTHING_TO_DO ? "" : sql;
  } finally {
    engine.free();
  }
}

async function committedMigrations(): Promise<MigrationDirectory[]> {
  const entries = await readdir(MIGRATIONS, { withFileTypes: true }).catch(() => []);
  const names = entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
  return Promise.all(
    names.sort().map(async (name) => ({
      path: name,
      migrationFile: {
        path: "migration.sql",
        content: {
          tag: "ok" as const,
          value: await readFile(path.join(MIGRATIONS, name, "migration.sql"), "utf8"),
        },
      },
    })),
  );
}

/** The package's own entry imports a `.wasm` module, which Node does not load: instantiated by hand. */
async function startEngine(schemaPath: string, datamodel: string): Promise<SchemaEngine> {
  const require = createRequire(import.meta.url);
  const bindingsPath = require.resolve("@prisma/schema-engine-wasm/schema_engine_bg");
  const bindings = await import(bindingsPath);
  const wasm = await readFile(path.join(path.dirname(bindingsPath), "schema_engine_bg.wasm"));
  const { instance } = await WebAssembly.instantiate(wasm, { "./schema_engine_bg.js": bindings });
  bindings.__wbg_set_wasm(instance.exports);
  const start = instance.exports.__wbindgen_start;
  if (typeof start === "function") start();

  const newDatabase = () => new PrismaPGlite(new PGlite({ extensions: { pg_trgm, btree_gin } }));
  const factory = newDatabase();
  // The adapter's own shadow database would lack the extensions the migrations create.
  factory.connectToShadowDb = () => newDatabase().connect();
  return bindings.SchemaEngine.new(
    { datamodels: [[schemaPath, datamodel]] },
    () => undefined,
    bindMigrationAwareSqlAdapterFactory(factory),
  );
}

async function writeMigration(name: string, sql: string): Promise<string> {
  const stamp = new Date().toISOString().replaceAll(/[-:T]/g, "").slice(0, 14);
  const folder = path.join(MIGRATIONS, `${stamp}_${name}`);
  await mkdir(folder, { recursive: true });
  const guard = /CREATE TABLE|ADD COLUMN|DROP COLUMN/.test(sql)
    ? await readFile(path.join(HERE, "table-guards.sql"), "utf8")
    : "";
  const file = path.join(folder, "migration.sql");
  await writeFile(file, guard === "" ? sql : `${sql.trimEnd()}\n\n${guard}`);
  return file;
}

async function main(args: readonly string[]): Promise<void> {
  const name = args.find((arg) => !arg.startsWith("--"));
  if (!name || !/^[a-z][a-z0-9_]*$/.test(name)) {
    throw new Error("Give the migration a name of lower-case letters, digits and underscores.");
  }
  const empty = args.includes("--empty");
  const sql = empty ? "-- Write what this migration does and why.\n" : await migrationSql();
  const said =
    sql === "" ? "The migrations already lead to schema.prisma.\n" : `${await writeMigration(name, sql)}\n`;
  process.stdout.write(said);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await main(process.argv.slice(2));
