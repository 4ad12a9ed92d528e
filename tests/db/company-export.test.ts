import { createHash } from "node:crypto";
import { parse } from "csv-parse/sync";
import { strFromU8, unzipSync } from "fflate";
import type { Client } from "pg";
import { afterAll, beforeAll, expect, test } from "vitest";
import { closeDatabase } from "@/lib/db/client";
import { companyExports } from "@/lib/db/company-exports";
import { readStoredFile, sha256Of } from "@/lib/files/store";
import { saveBrand } from "@/lib/services/brand";
import {
  askForExport,
  exportsView,
  makeExport,
  removeEndedExports,
  takeExport,
} from "@/lib/services/company-export";
import { deleteCompany } from "@/lib/services/delete-company";
import { tenantTables } from "../support/catalog";
import { connect, inRole } from "../support/connect";
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
  await deleteCompany(owner, { companyName, password: "long enough before" });
  const { rows } = await client.query("SELECT 1 FROM tenant WHERE id = $1", [owner.tenantId]);
  expect(rows).toEqual([]);
  await expect(readStoredFile(owner.tenantId, sha256)).rejects.toMatchObject({ code: "NOT_FOUND" });
});
