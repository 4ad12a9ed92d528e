import { afterAll, beforeAll, expect, test } from "vitest";
import { callbacks } from "@/lib/db/callbacks";
import { closeDatabase } from "@/lib/db/client";
import type { JobId } from "@/lib/domain/ids";
import { callbackListSchema, workCallbackSchema } from "@/lib/schemas/callback";
import { findJobs, jobCallbacks, listCallbacks, logCallback, workOnCallback } from "@/lib/services/callbacks";
import { importLog } from "@/lib/services/import-log";
import { type Crew, given, makeCrew } from "../support/people";
import { LOAD, openJob, save } from "../support/service-jobs";

let crew: Crew;
beforeAll(async () => {
  crew = await makeCrew();
});
afterAll(closeDatabase);

/** A log of ten days from the 10th of July 2026, every hour, at one humidity. */
function logOf(rh: number): Uint8Array {
  const rows = Array.from({ length: 240 }, (_, hour) => {
    const at = new Date(Date.UTC(2026, 6, 10, hour)).toISOString();
    return `${at.slice(0, 10)} ${at.slice(11, 16)},75.${hour % 10},${rh + (hour % 7) / 10}`;
  });
  return new TextEncoder().encode(`Local time,Indoor temperature F,Indoor RH %\n${rows.join("\n")}\n`);
}

async function fixedComplaint(kind: "too_humid" | "noise", fixedOn: string): Promise<JobId> {
  const job = await openJob(crew.office);
  await save(crew.office, job, "load_summary", LOAD);
  const id = await logCallback(crew.office, {
    jobId: job,
    kind,
    reportedOn: "2026-07-01",
    reportedByName: "",
    complaint: "Sticky",
  });
  await workOnCallback(
    crew.office,
    workCallbackSchema.parse({
      callbackId: id,
      expectedVersion: 1,
      causeKind: "fan-between-calls",
      cause: "Fan between calls",
      fix: "Fan off",
      fixedOn,
      outcome: "worked",
      outcomeNote: "",
      outcomeCheckedOn: fixedOn,
      signOutcome: "on",
    }),
  );
  return job;
}
const imported = (jobId: JobId, rh: number) =>
  importLog(crew.office, { jobId, fileName: "log.csv", bytes: logOf(rh), sourceName: "Hall", mapping: null });
const only = async (jobId: JobId) => given((await jobCallbacks(crew.owner, jobId))[0]);

test("a humid log since the fix opens the complaint again, once, and says why", async () => {
  const job = await fixedComplaint("too_humid", "2026-07-05");
  expect(await only(job)).toMatchObject({ state: "closed", dueOn: null, causeKind: "fan-between-calls" });
  await imported(job, 66);
  const again = await only(job);
  expect(again).toMatchObject({ state: "open", outcome: "did_not_work", outcomeSigned: null });
  expect(again.reopenedByLog).toMatch(/The log since 2026-07-05 has 240 of 240 hours above 55 %: 0 % dry/);
  const { callbacks } = await listCallbacks(crew.owner, callbackListSchema.parse({ state: "open" }));
  expect(callbacks.map((one) => one.id)).toContain(again.id);
});

test("a dry log leaves it closed", async () => {
  const job = await fixedComplaint("too_humid", "2026-07-05");
  await imported(job, 52);
  expect(await only(job)).toMatchObject({ state: "closed", reopenedByLog: "" });
});

test("three days since the fix are too few to say anything", async () => {
  const job = await fixedComplaint("too_humid", "2026-07-16");
  await imported(job, 66);
  expect((await only(job)).state).toBe("closed");
});

test("a log says nothing about noise", async () => {
  const job = await fixedComplaint("noise", "2026-07-05");
  await imported(job, 66);
  expect((await only(job)).state).toBe("closed");
});

test("the days before a complaint stand beside it, and a visit is due in three days", async () => {
  const job = await openJob(crew.office);
  await save(crew.office, job, "load_summary", LOAD);
  await imported(job, 63);
  await logCallback(crew.office, {
    jobId: job,
    kind: "musty",
    reportedOn: "2026-07-12",
    reportedByName: "",
    complaint: "Cellar smell",
  });
  const found = await only(job);
  expect(found.dueOn).toBe("2026-07-15");
  expect(found.evidence.days).toMatch(
    /^2026-07-10: outdoors not logged, indoors 75 °F and 63 % on average; /,
  );
});

test("a caller's job is found by name or number, another company's never", async () => {
  const job = await openJob(crew.office);
  const [found] = await findJobs(crew.office, "ember");
  expect(found?.customerName).toMatch(/ember/i);
  // By it two houses of one street are told apart.
  expect(found?.addressLine).toMatch(/^\d+ \S/);
  expect((await findJobs(crew.office, "zzzz")).length).toBe(0);
  const other = await makeCrew();
  expect(await findJobs(other.office, "ember")).toEqual([]);
  expect(job).toBeTruthy();
});

test("a month's callbacks are those reported in it, to its last day", async () => {
  const own = await makeCrew();
  const job = await openJob(own.office);
  const days = ["2026-06-30", "2026-07-01", "2026-07-31", "2026-08-01"];
  for (const reportedOn of days)
    await logCallback(own.office, {
      jobId: job,
      kind: "noise",
      reportedOn,
      reportedByName: "",
      complaint: "Hums",
    });
  const july = { jobId: null, state: null, kind: null, reportedIn: "2026-07" };
  const found = await callbacks(own.owner).list(july, { take: 10, skip: 0 });
  expect(found.map((one) => one.reportedOn).sort()).toEqual(["2026-07-01", "2026-07-31"]);
  expect(await callbacks(own.owner).count(july)).toBe(2);
});
