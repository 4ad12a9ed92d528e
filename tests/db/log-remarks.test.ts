import { parse } from "csv-parse/sync";
import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import { closeDatabase } from "@/lib/db/client";
import { logs } from "@/lib/db/logs";
import type { JobId } from "@/lib/domain/ids";
import { importLog } from "@/lib/services/import-log";
import { remarksCsv } from "@/lib/services/log-remarks";
import { type Crew, given, makeCrew } from "../support/people";
import { openJob, save } from "../support/service-jobs";

let crew: Crew;
let job: JobId;
beforeAll(async () => {
  crew = await makeCrew();
});
beforeEach(async () => {
  job = await openJob(crew.office);
  await save(crew.office, job, "load_summary", { humidityLimitPct: 60 });
});
afterAll(closeDatabase);

/** Five-minute rows from 1 June 2026; every `badEvery`-th has a humidity no air has. */
function file(rows: number, badEvery: number, stepMin = 5): Uint8Array {
  const begin = Date.UTC(2026, 5, 1);
  const lines = ["Local time,Indoor temperature F,Indoor RH %"];
  for (let at = 0; at < rows; at += 1) {
    const clock = new Date(begin + at * stepMin * 60_000).toISOString().slice(0, 16).replace("T", " ");
    lines.push(`${clock},75.0,${at % badEvery === 0 ? 140 : 52}`);
  }
  return new TextEncoder().encode(`${lines.join("\n")}\n`);
}

const add = (bytes: Uint8Array) =>
  importLog(crew.office, {
    jobId: job,
    fileName: "house.csv",
    bytes,
    sourceName: "Hall",
    mapping: null,
    timeZone: "UTC",
  });

async function listed(importId: string): Promise<readonly string[][]> {
  const stream = await remarksCsv(crew.office, { jobId: job, importId });
  return parse(await new Response(stream).text(), { bom: true }).slice(1);
}

test("each of 2,500 refused rows is in the file with its number and reason, though the page shows fewer", async () => {
  const { importId } = await add(file(5_000, 2));
  const rows = await listed(importId);
  // The first row of the file is its heading, so that the first refused reading stands in row 2.
  expect(rows.filter(([row]) => row !== "").map(([row]) => Number(row))).toEqual(
    Array.from({ length: 2_500 }, (_, at) => 2 + 2 * at),
  );
  for (const [, reason] of rows) expect(reason).toMatch(/140/);
  const kept = given((await logs(crew.office).list(job))[0]);
  expect(kept.remarkCount).toBe(2_500);
  expect(kept.problems.length).toBeLessThan(2_500);
});

test("a few remarks are in the file as on the page", async () => {
  const { importId } = await add(file(400, 100));
  expect(await listed(importId)).toHaveLength(4);
});

test("of another job, and of no import, there is no file", async () => {
  const { importId } = await add(file(400, 100));
  const other = await openJob(crew.office);
  await expect(remarksCsv(crew.office, { jobId: other, importId })).rejects.toMatchObject({
    code: "NOT_FOUND",
  });
  await expect(remarksCsv(crew.tech, { jobId: job, importId })).rejects.toMatchObject({ code: "NOT_FOUND" });
});
