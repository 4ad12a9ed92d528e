import { readdir } from "node:fs/promises";
import path from "node:path";
import { database } from "../client";

/** True when the database answers. */
export async function unscopedDatabaseAnswers(): Promise<boolean> {
  try {
    await database().$queryRaw`SELECT 1`;
    return true;
  } catch {
    return false;
  }
}

/** True when a migration that this code ships with has not been applied. */
export async function unscopedPendingMigrations(): Promise<boolean> {
  const shipped = await readdir(path.join(process.cwd(), "prisma/migrations"), { withFileTypes: true });
  const wanted = shipped.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
  const rows = await database().$queryRaw<{ name: string }[]>`
    SELECT migration_name AS name FROM _prisma_migrations WHERE finished_at IS NOT NULL`;
  const applied = new Set(rows.map((row) => row.name));
  return wanted.some((name) => !applied.has(name));
}
