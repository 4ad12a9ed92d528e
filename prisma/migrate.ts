/**
 * Brings a database to the committed migrations, and the work queue's own tables with it.
 *
 *     DATABASE_URL=postgresql://… npx tsx prisma/migrate.ts
 *
 * Writes the same `_prisma_migrations` table as Prisma would. Each migration is one transaction: it
 * is applied wholly or not at all. Runners of the same database wait for each other.
 */
import { createHash, randomUUID } from "node:crypto";
import { readdir, readFile } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { Logger, runMigrations } from "graphile-worker";
import { Client } from "pg";

const MIGRATIONS = path.join(path.dirname(fileURLToPath(import.meta.url)), "migrations");
/** Any number, the same in all runners. */
const LOCK = 7_201_161_125;

type Migration = { readonly name: string; readonly sql: string; readonly checksum: string };

/**
 * @returns The names of the migrations applied by this run, in order.
 * @throws Error when an applied migration was changed or is unknown to this version of the code.
 */
export async function migrate(databaseUrl: string, folder = MIGRATIONS): Promise<readonly string[]> {
  const migrations = await readMigrations(folder);
  const client = new Client({ connectionString: databaseUrl });
  await client.connect();
  try {
    await client.query("SELECT pg_advisory_lock($1)", [LOCK]);
    const missing = await findMissing(client, migrations);
    for (const migration of missing) await apply(client, migration);
    await runMigrations({ connectionString: databaseUrl, logger: new Logger(() => () => undefined) });
    return missing.map((migration) => migration.name);
  } finally {
    // The session's end frees the lock, also when the query above has failed.
    await client.end();
  }
}

async function readMigrations(folder: string): Promise<readonly Migration[]> {
  const entries = await readdir(folder, { withFileTypes: true });
  const names = entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
  return Promise.all(
    names.sort().map(async (name) => {
      const sql = await readFile(path.join(folder, name, "migration.sql"), "utf8");
      return { name, sql, checksum: createHash("sha256").update(sql).digest("hex") };
    }),
  );
}

async function findMissing(client: Client, migrations: readonly Migration[]): Promise<readonly Migration[]> {
  await client.query(`
    CREATE TABLE IF NOT EXISTS _prisma_migrations (
      id varchar(36) PRIMARY KEY,
      checksum varchar(64) NOT NULL,
      finished_at timestamptz,
      migration_name varchar(255) NOT NULL,
      logs text,
      rolled_back_at timestamptz,
      started_at timestamptz NOT NULL DEFAULT now(),
      applied_steps_count integer NOT NULL DEFAULT 0
    )`);
  const { rows } = await client.query<{ name: string; checksum: string }>(
    `SELECT migration_name AS name, checksum FROM _prisma_migrations
     WHERE finished_at IS NOT NULL AND rolled_back_at IS NULL`,
  );
  const applied = new Map(rows.map((row) => [row.name, row.checksum]));
  for (const name of applied.keys()) {
    if (migrations.some((migration) => migration.name === name)) continue;
    throw new Error(
      `The database has the migration ${name}, which this version does not know. Use a newer version.`,
    );
  }
  for (const { name, checksum } of migrations) {
    const before = applied.get(name);
    if (before === undefined || before === checksum) continue;
    throw new Error(
      `The migration ${name} was changed after it was applied. Restore it and write a new one.`,
    );
  }
  return migrations.filter((migration) => !applied.has(migration.name));
}

async function apply(client: Client, migration: Migration): Promise<void> {
  await client.query("BEGIN");
  try {
    await client.query(migration.sql);
    await client.query(
      `INSERT INTO _prisma_migrations (id, checksum, migration_name, started_at, finished_at, applied_steps_count)
       VALUES ($1, $2, $3, now(), clock_timestamp(), 1)`,
      [randomUUID(), migration.checksum, migration.name],
    );
    await client.query("COMMIT");
  } catch (error) {
    await client.query("ROLLBACK");
    throw new Error(`The migration ${migration.name} failed; nothing of it was kept.`, { cause: error });
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const url = process.env.DATABASE_URL;
  if (!url) throw new Error("Set DATABASE_URL to the database to migrate.");
  const applied = await migrate(url);
  process.stdout.write(applied.length === 0 ? "Nothing to migrate.\n" : `Applied ${applied.join(", ")}.\n`);
}
