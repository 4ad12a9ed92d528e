import { appendFile, cp, mkdir, readdir, rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import { type EmbeddedServer, startEmbedded } from "@/prisma/embedded";
import { migrate } from "@/prisma/migrate";
import { migrationSql } from "@/prisma/new-migration";
import { connect } from "../support/connect";
import { makeServerFolder, removeServerFolder } from "../support/own-server";

const COMMITTED = path.resolve(import.meta.dirname, "../../prisma/migrations");

let folder: string;
let server: EmbeddedServer;
/** A copy of the committed migrations that a test may spoil. */
let copy: string;

beforeAll(async () => {
  folder = await makeServerFolder();
  server = await startEmbedded({ folder, unsafeButFast: true });
});
afterAll(async () => {
  await server.stop();
  await removeServerFolder(folder);
});
beforeEach(async () => {
  copy = path.join(folder, "migrations");
  await rm(copy, { recursive: true, force: true });
  await cp(COMMITTED, copy, { recursive: true });
});

async function committedNames(): Promise<readonly string[]> {
  return (await readdir(COMMITTED)).filter((name) => /^\d{14}_/.test(name)).sort();
}

async function ask(sql: string): Promise<readonly Record<string, unknown>[]> {
  const client = await connect(server.url);
  try {
    return (await client.query(sql)).rows;
  } finally {
    await client.end();
  }
}

async function addMigration(name: string, sql: string): Promise<void> {
  await mkdir(path.join(copy, name));
  await writeFile(path.join(copy, name, "migration.sql"), sql);
}

test("of three runners at once on an empty database, one applies everything", async () => {
  const runs = await Promise.all([migrate(server.url), migrate(server.url), migrate(server.url)]);
  expect(runs.map((applied) => applied.length).toSorted()).toEqual([0, 0, (await committedNames()).length]);
  expect(runs.flat()).toEqual(await committedNames());
  expect(await ask("SELECT count(*)::int AS n FROM graphile_worker.migrations WHERE id > 1")).not.toEqual([
    { n: 0 },
  ]);
});

test("a second run does nothing", async () => {
  await migrate(server.url);
  const before = await ask("SELECT * FROM _prisma_migrations ORDER BY id");
  expect(await migrate(server.url)).toEqual([]);
  expect(await ask("SELECT * FROM _prisma_migrations ORDER BY id")).toEqual(before);
});

test("an applied migration that was changed is refused", async () => {
  await migrate(server.url);
  const [first] = await committedNames();
  await appendFile(path.join(copy, String(first), "migration.sql"), "\nSELECT 1;\n");
  await expect(migrate(server.url, copy)).rejects.toThrow(`${first} was changed`);
});

test("a database ahead of the code is refused", async () => {
  await migrate(server.url);
  const last = (await committedNames()).at(-1);
  await rm(path.join(copy, String(last)), { recursive: true });
  await expect(migrate(server.url, copy)).rejects.toThrow(`${last}, which this version does not know`);
});

test("a migration that fails half-way leaves nothing, and its mended version is applied", async () => {
  await migrate(server.url);
  await addMigration("29990101000000_mended", "CREATE TABLE half (n int); SELECT 1 / 0;");
  await expect(migrate(server.url, copy)).rejects.toThrow(
    "29990101000000_mended failed; nothing of it was kept",
  );
  expect(await ask("SELECT to_regclass('half') AS there")).toEqual([{ there: null }]);
  await writeFile(path.join(copy, "29990101000000_mended/migration.sql"), "CREATE TABLE half (n int);");
  expect(await migrate(server.url, copy)).toEqual(["29990101000000_mended"]);
  await ask("DROP TABLE half; DELETE FROM _prisma_migrations WHERE migration_name LIKE '2999%'");
});

test("the committed migrations lead to schema.prisma", async () => {
  expect(await migrationSql()).toBe("");
}, 120_000);
