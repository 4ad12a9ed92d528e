import { createHash, randomUUID } from "node:crypto";
import { readdir, readFile } from "node:fs/promises";
import path from "node:path";
import { parse } from "csv-parse/sync";
import { strFromU8, unzipSync } from "fflate";
import type { Client } from "pg";
import { afterAll, beforeAll, expect, test } from "vitest";
import { closeDatabase } from "@/lib/db/client";
import { companyExports } from "@/lib/db/company-exports";
import { unscopedEraseCompany } from "@/lib/db/unscoped/erase-company";
import { env } from "@/lib/env";
import { readStoredFile, sha256Of, storeFile } from "@/lib/files/store";
import { saveBrand } from "@/lib/services/brand";
import {
  askForExport,
  exportsView,
  makeExport,
  removeEndedExports,
  takeExport,
} from "@/lib/services/company-export";
import { deleteCompany, finishDeletion } from "@/lib/services/delete-company";
import { tenantTables } from "../support/catalog";
import { connect, inRole } from "../support/connect";
import { REPORT } from "../support/door-samples";
import { makeCrew } from "../support/people";
import { makeWholeCompany, type WholeCompany } from "../support/whole-company";

const DAY_MS = 86_400_000;
let client: Client;
let ours: WholeCompany;
let theirs: WholeCompany;

beforeAll(async () => {
  client = await connect();
  ours = await makeWholeCompany();
  theirs = await makeWholeCompany();
}, 60_000);
afterAll(async () => {
  await client.end();
  await closeDatabase();
});

async function archiveOf({ crew: { owner } }: WholeCompany, between?: () => Promise<void>) {
  const id = await companyExports(owner).add();
  await makeExport(owner, id, async () => undefined);
  await between?.();
  const { stream } = await takeExport(owner, id);
  const bytes = new Uint8Array(await new Response(stream).arrayBuffer());
  return { id, sha256: sha256Of(bytes), entries: unzipSync(bytes) };
}

test("an export holds every row and file of the company, nothing of another, and no secret", async () => {
  const tables = await tenantTables(client);
  const counts: Record<string, number> = {};
  // Counted before the download, which the trail tells of.
  const { entries } = await archiveOf(ours, () =>
    inRole(client, "app_user", ours.crew.owner, async () => {
      for (const { name } of tables)
        counts[name] = (await client.query(`SELECT count(*)::int AS n FROM "${name}"`)).rows[0].n;
    }),
  );
  const names = Object.keys(entries);
  expect(names.filter((name) => name.startsWith("tables/")).toSorted()).toEqual(
    tables.map(({ name }) => `tables/${name}.csv`).toSorted(),
  );
  const hashes = new Set<string>();
  for (const { name } of tables) {
    const rows: Record<string, string>[] = parse(
      strFromU8(entries[`tables/${name}.csv`] ?? new Uint8Array()),
      {
        bom: true,
        columns: true,
      },
    );
    expect([name, rows.length]).toEqual([name, counts[name]]);
    for (const row of rows) {
      expect(Object.keys(row).filter((column) => /token|sealed|password/.test(column))).toEqual([]);
      if (name !== "company_export" && row.sha256) hashes.add(row.sha256);
    }
  }
  const files = names.filter((name) => name.startsWith("files/"));
  expect(files.length).toBeGreaterThan(2);
  for (const name of files) {
    const bytes = entries[name] ?? new Uint8Array();
    expect(name).toContain(createHash("sha256").update(bytes).digest("hex"));
  }
  expect(files.some((name) => hashes.has(name.slice(6, 70)))).toBe(true);
  const everything = names.map((name) => strFromU8(entries[name] ?? new Uint8Array(), true)).join("\n");
  expect(everything).toContain(ours.ids.jobId);
  expect(everything).not.toContain(theirs.ids.jobId);
  expect(everything).not.toContain(theirs.crew.owner.tenantId);
});

test("a text that a spreadsheet would run is led by an apostrophe, and marks of a CSV come back whole", async () => {
  const { owner } = ours.crew;
  const words = '=2+2\nsaid "so", Łukasz';
  await saveBrand(owner, {
    displayName: "A",
    licenseLine: "",
    phone: "",
    email: "",
    website: "",
    addressLines: [],
    accentColor: "#7a1f4f",
    coverWords: words,
    closingWords: "",
    coverWordsEs: "",
    closingWordsEs: "",
    termsWords: "",
    termsWordsEs: "",
    paper: "letter",
    coverStyle: "ledger",
    partsWarrantyYears: null,
    laborWarrantyYears: null,
    maintenanceMonths: null,
  });
  const { entries } = await archiveOf(ours);
  const rows: Record<string, string>[] = parse(strFromU8(entries["tables/brand.csv"] ?? new Uint8Array()), {
    bom: true,
    columns: true,
  });
  expect(rows[0]?.cover_words).toBe(`'${words}`);
});

test("an export ends after a week, its bytes with it", async () => {
  const { owner } = theirs.crew;
  const { id, sha256 } = await archiveOf(theirs);
  const later = new Date(Date.now() + 8 * DAY_MS);
  await expect(takeExport(owner, id, later)).rejects.toMatchObject({ code: "NOT_FOUND" });
  expect((await exportsView(owner, later)).exports).toEqual([]);
  await removeEndedExports(owner, later);
  await expect(readStoredFile(owner.tenantId, sha256)).rejects.toMatchObject({ code: "NOT_FOUND" });
});

test("one export at a time", async () => {
  const { owner } = theirs.crew;
  await askForExport(owner);
  await expect(askForExport(owner)).rejects.toMatchObject({ code: "CONFLICT" });
});

test("a company is deleted only by its name and the owner's password; its files go too", async () => {
  const leaving = await makeWholeCompany();
  const { owner } = leaving.crew;
  const { companyName } = leaving.ids;
  const { sha256 } = await archiveOf(leaving);
  await expect(
    deleteCompany(owner, { companyName: "another", password: "long enough before" }),
  ).rejects.toMatchObject({ fields: [{ field: "companyName" }] });
  await expect(deleteCompany(owner, { companyName, password: "a guess" })).rejects.toMatchObject({
    fields: [{ field: "password" }],
  });
  expect(await readStoredFile(owner.tenantId, sha256)).not.toHaveLength(0);
  const isThere = () =>
    inRole(
      client,
      "app_unscoped",
      null,
      async () => (await client.query("SELECT 1 FROM tenant WHERE id = $1", [owner.tenantId])).rows.length,
    );
  expect(await isThere()).toBe(1);
  await deleteCompany(owner, { companyName, password: "long enough before" });
  expect(await isThere()).toBe(0);
  await expect(readStoredFile(owner.tenantId, sha256)).rejects.toMatchObject({ code: "NOT_FOUND" });
});

test("files that a stopped server left of a deleted company, and the mail about it, are the queue's", async () => {
  const { owner } = await makeCrew();
  await storeFile(owner.tenantId, REPORT, "report", "file");
  const mail = { to: `${randomUUID()}@example.com`, subject: "Gone", text: "It is gone." };
  // All that is kept when the server stops right after the rows have gone.
  await unscopedEraseCompany(owner, [mail]);
  const { rows } = await client.query<{ payload: Record<string, unknown> }>(
    `SELECT j.payload FROM graphile_worker._private_jobs j JOIN graphile_worker._private_tasks t ON t.id = j.task_id
     WHERE t.identifier = 'after_erasure' AND (j.payload->>'filesOf' = $1 OR j.payload->'mail'->>'to' = $2)`,
    [owner.tenantId, mail.to],
  );
  expect(rows).toHaveLength(2);
  const folder = path.join(env().DATA_DIR, "files", owner.tenantId);
  expect(await readdir(folder)).not.toEqual([]);
  // Each twice: a server may stop after any of them.
  for (const { payload } of [...rows, ...rows]) await finishDeletion(payload);
  await expect(readdir(folder)).rejects.toMatchObject({ code: "ENOENT" });
  const outbox = path.join(env().DATA_DIR, "outbox");
  const mails = await Promise.all(
    (await readdir(outbox)).map((name) => readFile(path.join(outbox, name), "utf8")),
  );
  const told = mails.filter((text) => text.includes(`To: ${mail.to}`));
  // One mail, whose second copy mail programs know by its id.
  expect(new Set(told.map((text) => /^Message-ID: (.*)$/im.exec(text)?.[1])).size).toBe(1);
});
