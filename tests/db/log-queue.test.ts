import { afterAll, afterEach, beforeAll, expect, test } from "vitest";
import { closeDatabase } from "@/lib/db/client";
import { logSources } from "@/lib/db/log-sources";
import { logs } from "@/lib/db/logs";
import { workItems } from "@/lib/db/work-items";
import type { JobId } from "@/lib/domain/ids";
import { WorkCancelledError } from "@/lib/domain/work";
import { readStoredFile, sha256Of } from "@/lib/files/store";
import { cancelLogImport, logImportProgress, queueLogImport, runLogImport } from "@/lib/services/log-queue";
import { startWorker, type Worker } from "@/lib/work/worker";
import { until } from "../support/own-server";
import { type Crew, given, makeCrew } from "../support/people";
import { openJob, refusedBy, save } from "../support/service-jobs";

// What fails here fails on purpose.
process.env.LOG_LEVEL = "silent";
let crew: Crew;
let worker: Worker | null = null;
beforeAll(async () => {
  crew = await makeCrew();
});
afterEach(async () => {
  await worker?.stop();
  worker = null;
});
afterAll(closeDatabase);

async function readyJob(): Promise<JobId> {
  const job = await openJob(crew.office);
  await save(crew.office, job, "load_summary", { humidityLimitPct: 55 });
  return job;
}

const START = Date.UTC(2026, 6, 1);
const hourly = (rh: number, count = 48) =>
  `Time,Indoor temperature F,Indoor RH %\n${Array.from({ length: count }, (_, at) => `${new Date(START + at * 3_600_000).toISOString().slice(0, 19)}Z,75,${rh}`).join("\n")}\n`;
const queue = (jobId: string, text: string, sourceName = "Hall") =>
  queueLogImport(crew.office, {
    jobId,
    fileName: "hall.csv",
    bytes: new TextEncoder().encode(text),
    sourceName,
    mapping: null,
  });
const kept = async (job: JobId) => (await logs(crew.office).list(job)).length;

test("an upload is answered at once, read by the worker, and followed to its end", async () => {
  const job = await readyJob();
  const { workId } = await queue(job, hourly(52));
  expect(await logImportProgress(crew.office, { jobId: job, workId })).toMatchObject({ state: "waiting" });
  expect(await kept(job)).toBe(0);
  worker = startWorker();
  const now = () => logImportProgress(crew.office, { jobId: job, workId });
  await until(async () => (await now()).state === "done", "the log is read");
  expect(await now()).toMatchObject({
    share: 1,
    message: expect.stringMatching(/^48 rows imported, 0 rows/),
  });
  expect(await kept(job)).toBe(1);
  // Of another job it is nothing.
  const other = await readyJob();
  expect((await refusedBy(logImportProgress(crew.office, { jobId: other, workId }))).code).toBe("NOT_FOUND");
});

test("a file that cannot be read fails once, with the reason at its field, and is not tried again", async () => {
  const job = await readyJob();
  const { workId } = await queue(job, "only,words\nin,here\n");
  worker = startWorker();
  const now = () => logImportProgress(crew.office, { jobId: job, workId });
  await until(async () => (await now()).state === "failed", "the log is refused");
  expect(await now()).toMatchObject({ fields: [{ field: "file", message: (await now()).message }] });
  expect((await workItems(crew.owner).find("import log", workId))?.item.attempt).toBe(1);
  expect(await kept(job)).toBe(0);
});

test("stopped before it begins, nothing is kept and the file is gone", async () => {
  const job = await readyJob();
  const text = hourly(53);
  const { workId } = await queue(job, text);
  const asked = { jobId: job, workId };
  expect(await cancelLogImport(crew.office, asked)).toMatchObject({ state: "cancelled" });
  expect((await refusedBy(cancelLogImport(crew.office, asked))).code).toBe("CONFLICT");
  const file = readStoredFile(crew.office.tenantId, sha256Of(new TextEncoder().encode(text)));
  expect((await refusedBy(file)).code).toBe("NOT_FOUND");
  expect(await workItems(crew.owner).begin(workId)).toBeNull();
  expect(await kept(job)).toBe(0);
});

test("stopped while it is read, nothing of it is kept: no import, no day, no logger's name", async () => {
  const job = await readyJob();
  const { workId } = await queue(job, hourly(54), "A name of its own");
  const begun = given(await workItems(crew.owner).begin(workId));
  let stopped = 0;
  // The person presses Cancel between two steps, and the step goes on before it hears of it.
  const reading = runLogImport(crew.office, workId, begun.input, async () => {
    if (stopped++ === 0) await workItems(crew.owner).cancel(workId);
  });
  await expect(reading).rejects.toBeInstanceOf(WorkCancelledError);
  expect(stopped).toBeGreaterThan(0);
  expect(await kept(job)).toBe(0);
  expect((await logSources(crew.office).list()).map(({ name }) => name)).not.toContain("A name of its own");
});

test("what is missing for any log is said at once, before a file is kept", async () => {
  const job = await openJob(crew.office);
  expect((await refusedBy(queue(job, hourly(55)))).message).toContain("humidity limit");
});
