import { readFile } from "node:fs/promises";
import path from "node:path";
import { parse } from "csv-parse/sync";
import type { Client } from "pg";
import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import { activity } from "@/lib/db/activity";
import { closeDatabase } from "@/lib/db/client";
import { logs } from "@/lib/db/logs";
import type { JobId } from "@/lib/domain/ids";
import { sha256Of } from "@/lib/files/store";
import { importLog } from "@/lib/services/import-log";
import { getJob } from "@/lib/services/jobs";
import { logPanelView } from "@/lib/services/log-view";
import { rowsOfCompany } from "../support/company-rows";
import { connect } from "../support/connect";
import { type Crew, given, makeCrew } from "../support/people";
import { openJob, refusedBy, save } from "../support/service-jobs";

/** Appliances Energy Prediction data set, UCI, CC BY 4.0; see its README. */
const FILE = path.resolve(import.meta.dirname, "../fixtures/house-log/measured-house-2016-a.csv");
const LIMIT_PCT = 42;

let client: Client;
let crew: Crew;
let job: JobId;
let measured: Buffer;

beforeAll(async () => {
  client = await connect();
  crew = await makeCrew();
  measured = await readFile(FILE);
});
beforeEach(async () => {
  job = await openJob(crew.office);
  await save(crew.office, job, "load_summary", { humidityLimitPct: LIMIT_PCT });
});
afterAll(async () => {
  await client.end();
  await closeDatabase();
});

const add = (bytes: Uint8Array, sourceName = "House logger", fileName = "house.csv") =>
  importLog(crew.office, { jobId: job, fileName, bytes, sourceName, mapping: null });

test("a measured house's log is kept row by row, and its dry hours are those of plain counting", async () => {
  const imported = await add(measured);
  /** By csv-parse and counting alone: none of the code under test. */
  const rows: Record<string, string>[] = parse(measured, { columns: true });
  const rh = rows.map((row) => Number(row.RH_1));
  expect(rows).toHaveLength(6_768);
  // Not a row is lost where the company's clock skips an hour (13 March 2016) and the logger's did not.
  expect([imported.rowsKept, imported.rowsRefused]).toEqual([6_768, 0]);

  const [kept] = await logs(crew.office).list(job);
  expect(kept).toMatchObject({ sha256: sha256Of(measured), rowsRead: 6_768, rowsKept: 6_768 });
  // What was assumed at the skipped hour is said, once.
  expect(given(kept).problems.map(({ reason }) => reason)).toEqual([
    expect.stringMatching(/^Skipped hour of the clock change/),
  ]);
  const summary = given(given(kept).summary);
  // Rows of 10 minutes: 6 are an hour.
  expect(summary.loggedHours).toBeCloseTo(6_768 / 6, 9);
  expect(summary.dryHours).toBeCloseTo(rh.filter((value) => value <= LIMIT_PCT).length / 6, 9);
  expect(summary.hoursAboveLimit).toBeCloseTo(rh.filter((value) => value > LIMIT_PCT).length / 6, 9);
  const between = rh.filter((value) => value >= 50 && value <= 60).length;
  expect(summary.share50To60Pct).toBeCloseTo((100 * between) / 6_768, 9);

  const view = await logPanelView(crew.office, await getJob(crew.office, job), imported.importId, LIMIT_PCT);
  expect(view.points).toHaveLength(6_768);
  const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / values.length;
  expect(mean(view.points.map((point) => point.relativeHumidityPercent ?? Number.NaN))).toBeCloseTo(
    mean(rh),
    1,
  );
});

test("the same file twice is one import, also at the same moment; a corrected one is a second", async () => {
  const [first, second] = await Promise.all([add(measured), add(measured)]);
  expect(second.importId).toBe(first.importId);
  expect((await add(measured)).importId).toBe(first.importId);
  expect(await logs(crew.office).list(job)).toHaveLength(1);
  const told = (await activity(crew.owner).list({ jobId: job, take: 50 })).map((line) => line.action);
  expect(told.filter((one) => one === "log imported")).toHaveLength(1);
  const shorter = measured.subarray(0, measured.lastIndexOf("\n", measured.length - 2) + 1);
  await add(shorter);
  expect(await logs(crew.office).list(job)).toHaveLength(2);
});

const text = (words: string) => new TextEncoder().encode(words);
test.each([
  ["an empty file", new Uint8Array()],
  ["a file of spaces", text(" \n \n")],
  ["random bytes", Uint8Array.from({ length: 4_096 }, (_, n) => (n * 7_919) % 256)],
  ["a zip archive", Uint8Array.of(0x50, 0x4b, 3, 4, ...Array.from({ length: 400 }, (_, n) => n % 251))],
  ["a picture", Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13)],
  ["a PDF", text("%PDF-1.7\n1 0 obj\n")],
  ["a web page", text("<!doctype html><html><body>Please sign in</body></html>")],
  ["JSON", text('{"rows":[{"t":"2026-07-01","rh":50}]}')],
  ["a letter", text("Dear customer,\nyour house is fine.\nYours\n")],
  ["a table without humidity", text("time,amount\n2026-07-01 00:00,1\n2026-07-01 01:00,2\n")],
])("%s is refused as a file, naming the field, and nothing is kept", async (_, bytes) => {
  const before = await rowsOfCompany(client, crew.owner);
  const refused = await refusedBy(add(bytes));
  expect(refused.code).toBe("UNSUPPORTED_FILE");
  expect(refused.fields.map((one) => one.field)).toEqual(["file"]);
  expect(refused.message.length).toBeGreaterThan(15);
  expect(await rowsOfCompany(client, crew.owner)).toEqual(before);
});

test("rows that cannot be are refused one by one with their line and reason; the others count", async () => {
  const rows = Array.from({ length: 48 }, (_, n) => {
    const time = `2026-07-0${1 + Math.floor(n / 24)} ${String(n % 24).padStart(2, "0")}:00`;
    return `${time},75.0,${n === 5 ? "140" : "40.0"}`;
  });
  const { rowsKept, rowsRefused } = await add(
    text(`Local time,Indoor temperature F,Indoor RH %\n${rows.join("\n")}\n`),
  );
  expect([rowsKept, rowsRefused]).toEqual([48, 1]);
  const [kept] = await logs(crew.office).list(job);
  // The heading is line 1, so the sixth row is line 7.
  expect(given(kept).problems).toMatchObject([{ row: 7 }]);
  expect(given(kept).problems[0]?.reason).toMatch(/140/);
  expect(given(given(kept).summary).loggedHours).toBeCloseTo(47, 6);
});

test("without the humidity limit nothing can be held against it, and that is said", async () => {
  const bare = await openJob(crew.office);
  const attempt = importLog(crew.office, {
    jobId: bare,
    fileName: "house.csv",
    bytes: measured,
    sourceName: "House logger",
    mapping: null,
  });
  expect(await refusedBy(attempt)).toMatchObject({ code: "CONFLICT" });
  expect(await logs(crew.office).list(bare)).toEqual([]);
});
