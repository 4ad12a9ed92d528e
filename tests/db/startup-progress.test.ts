import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, expect, test } from "vitest";
import { closeDatabase } from "@/lib/db/client";
import { fieldContacts } from "@/lib/db/field-contacts";
import type { JobId } from "@/lib/domain/ids";
import { getJob } from "@/lib/services/jobs";
import { scheduleJob } from "@/lib/services/plan-job";
import { progressOfJob, progressTag, startupsToday } from "@/lib/services/progress";
import { askQuestion } from "@/lib/services/questions";
import { syncStartup } from "@/lib/services/sync-startup";
import { type Crew, makeCrew } from "../support/people";
import { openJob, refusedBy } from "../support/service-jobs";

let crew: Crew;
let job: JobId;

/** 23:30 of 1 July in Chicago, where the crew works; in London it is the 2nd. */
const LATE_EVENING = new Date("2026-07-02T04:30:00Z");

beforeAll(async () => {
  crew = await makeCrew();
  job = await openJob(crew.office, { techIds: [crew.tech.userId] });
});
afterAll(closeDatabase);

async function dueOn(day: string) {
  const { version } = await getJob(crew.office, job);
  const plan = { jobId: job, expectedVersion: version, reviewDue: null, techIds: [crew.tech.userId] };
  await scheduleJob(crew.office, { ...plan, startupDue: day });
}
const listed = async () => (await startupsToday(crew.office, LATE_EVENING)).startups.map((one) => one.jobId);

test("today is the company's day; what is overdue stays for two weeks, what is to come is not there", async () => {
  await dueOn("2026-07-01");
  expect(await listed()).toEqual([job]);
  await dueOn("2026-07-02");
  expect(await listed()).toEqual([]);
  await dueOn("2026-06-18");
  expect(await listed()).toEqual([job]);
  await dueOn("2026-06-16");
  expect(await listed()).toEqual([]);
});

test("a contact brings a job onto the list and tells what still waits on the phone", async () => {
  await fieldContacts(crew.tech).note([job], { fields: 3, photos: 2 });
  expect(await listed()).toEqual([job]);
  expect(await progressOfJob(crew.office, job)).toMatchObject({ waitingFields: 3, waitingPhotos: 2 });
});

test("readings, verdict and questions move the progress and its tag; nothing new keeps the tag", async () => {
  const before = await progressOfJob(crew.office, job);
  expect(before).toMatchObject({
    state: "not begun",
    neededDone: 0,
    entered: 0,
    lastContact: expect.any(String),
  });
  expect(progressTag([before])).toBe(progressTag([await progressOfJob(crew.office, job)]));
  const fields = { outdoorDbF: { base: null, value: 91 }, supplyVoltage: { base: null, value: 240 } };
  const sent = { clientId: randomUUID(), deviceTime: "2026-07-01T12:00:00.000Z", fields };
  await syncStartup(crew.tech, { jobId: job, ...sent, waiting: { fields: 0, photos: 1 } });
  await askQuestion(crew.office, { jobId: job, fieldPath: null, text: "Which filter?" });
  const after = await progressOfJob(crew.office, job);
  expect(after).toMatchObject({
    state: "draft",
    neededDone: 1,
    entered: 2,
    waitingFields: 0,
    waitingPhotos: 1,
    openQuestions: 1,
  });
  expect(progressTag([after])).not.toBe(progressTag([before]));
});

test("another tech, and another company, see nothing of it", async () => {
  expect((await refusedBy(progressOfJob(crew.otherTech, job))).code).toBe("NOT_FOUND");
  const elsewhere = await makeCrew();
  expect((await refusedBy(progressOfJob(elsewhere.office, job))).code).toBe("NOT_FOUND");
  expect((await startupsToday(elsewhere.office, LATE_EVENING)).startups).toEqual([]);
});
