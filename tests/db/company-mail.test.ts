import { readdir, readFile, rm } from "node:fs/promises";
import { join } from "node:path";
import type { Client } from "pg";
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from "vitest";
import { closeDatabase } from "@/lib/db/client";
import { overdueCallbacks } from "@/lib/db/overdue-callbacks";
import { withTenant } from "@/lib/db/with-tenant";
import { workItems } from "@/lib/db/work-items";
import { dayAfter, todayIn } from "@/lib/domain/days";
import type { JobId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { env } from "@/lib/env";
import { logCallback } from "@/lib/services/callbacks";
import { queueDueMail } from "@/lib/services/company-mail/due-mail";
import { mailMonth } from "@/lib/services/company-mail/month-mail";
import { sendOnce } from "@/lib/services/company-mail/send-once";
import { switchMail } from "@/lib/services/company-mail/switches";
import { TASKS } from "@/lib/work/tasks";
import { startWorker, type Worker } from "@/lib/work/worker";
import { connect } from "../support/connect";
import { until } from "../support/own-server";
import { type Crew, makeCrew } from "../support/people";
import { openJob, refusedBy } from "../support/service-jobs";

let client: Client;
let crew: Crew;
let worker: Worker | null = null;
const TODAY = todayIn("America/Chicago");

beforeAll(async () => {
  client = await connect();
});
beforeEach(async () => {
  crew = await makeCrew();
  // What other tests of this database have queued would be mailed by the workers of these.
  await client.query("DELETE FROM graphile_worker._private_jobs");
  await rm(join(env().DATA_DIR, "outbox"), { recursive: true, force: true });
});
afterEach(async () => {
  await worker?.stop();
  worker = null;
});
afterAll(async () => {
  await client.end();
  await closeDatabase();
});

const mails = async () => {
  const folder = join(env().DATA_DIR, "outbox");
  const names = await readdir(folder).catch(() => []);
  const files = await Promise.all(names.toSorted().map((name) => readFile(join(folder, name), "utf8")));
  // Long lines are folded on their way (RFC 2045, quoted-printable).
  return files.map((file) => file.replaceAll("=\r\n", ""));
};
const addressees = async () =>
  (await mails()).map((mail) => /^To: (owner|office|tech)-/m.exec(mail)?.[1]).toSorted();
const work = (scope: TenantScope) =>
  workItems(scope).list(["waiting", "running", "failed", "done"], { take: 50 });
const done = async () => (await work(crew.owner)).every(({ state }) => state === "done");

const complain = (jobId: JobId, reportedOn = TODAY, dueOn?: string) =>
  logCallback(crew.office, {
    jobId,
    kind: "too_humid",
    reportedOn,
    reportedByName: "Ann",
    complaint: "Sticky every evening",
    ...(dueOn === undefined ? {} : { dueOn }),
  });
/** A time at 9 in the morning of a day in Chicago (UTC−5 or −6). */
const nineOn = (day: string) => new Date(`${day}T15:00:00Z`);

test("a complaint that comes in is mailed to owner and office by the queue, and to nobody else", async () => {
  const job = await openJob(crew.office, { techIds: [crew.tech.userId] });
  await complain(job);
  worker = startWorker(TASKS);
  await until(async () => (await work(crew.owner)).length === 1 && (await done()), "the mail has gone");
  expect(await addressees()).toEqual(["office", "owner"]);
  const [mail] = await mails();
  expect(mail).toContain("Sticky every evening");
  expect(mail).toContain(`/jobs/${job}/callbacks`);
  expect((await work(crew.owner))[0]?.result).toBe("Mailed to 2 people.");
});

test("a complaint of last month that is caught up with is no news", async () => {
  await complain(await openJob(crew.office), dayAfter(TODAY, -40));
  expect(await work(crew.owner)).toEqual([]);
});

test("who has switched a kind off is not mailed, whoever the mail is about", async () => {
  await switchMail(crew.owner, { on: ["month"] });
  await complain(await openJob(crew.office));
  worker = startWorker(TASKS);
  await until(async () => (await work(crew.owner)).length === 1 && (await done()), "the mail has gone");
  expect(await addressees()).toEqual(["office"]);
});

test("a clock that once ran years ahead leaves no silence behind it", async () => {
  const callbackId = await complain(await openJob(crew.office), dayAfter(TODAY, -30), dayAfter(TODAY, -1));
  expect(callbackId).toBeTruthy();
  const titles = async () => (await work(crew.owner)).map(({ title }) => title);
  await queueDueMail(crew.owner, nineOn("2098-05-03"));
  expect(await titles()).toContain("Mail: the month 2098-04");
  await queueDueMail(crew.owner, nineOn(TODAY));
  expect(await titles()).toContain(`Mail: complaints overdue on ${TODAY}`);
  const next = `${Number(TODAY.slice(0, 4)) + 1}-03-02`;
  await queueDueMail(crew.owner, nineOn(next));
  expect(await titles()).toContain(`Mail: the month ${next.slice(0, 5)}02`);
});

test("one mail, asked for five times at once, goes to each person once", async () => {
  const mail = { kind: "complaints", key: "same", message: { subject: "One", text: "Once." } } as const;
  await Promise.all(Array.from({ length: 5 }, () => sendOnce(crew.owner, mail)));
  expect(await addressees()).toEqual(["office", "owner"]);
  expect(await sendOnce(crew.owner, mail)).toBe("Had been mailed before.");
});

test("a mail that was refused is tried again for those who did not get it, and only for them", async () => {
  const address = (email: string) =>
    withTenant(crew.office, (tx) =>
      tx.membership.updateMany({
        where: { tenantId: crew.office.tenantId, userId: crew.office.userId },
        data: { email },
      }),
    );
  await address("no address");
  const mail = { kind: "complaints", key: "refused", message: { subject: "One", text: "Once." } } as const;
  await refusedBy(sendOnce(crew.owner, mail));
  expect(await addressees()).toEqual(["owner"]);
  await address("office-mended@example.com");
  expect(await sendOnce(crew.owner, mail)).toBe("Mailed to 1 person.");
  expect(await addressees()).toEqual(["office", "owner"]);
});

test("what is overdue is told in one list from 7 on, once a day and only when something has become so", async () => {
  const job = await openJob(crew.office);
  const callbackId = await complain(job, dayAfter(TODAY, -30), dayAfter(TODAY, -1));
  const asked = async () => (await work(crew.owner)).map(({ title }) => title);
  // 6 in the morning in Chicago at the latest.
  await queueDueMail(crew.owner, new Date(`${TODAY}T10:30:00Z`));
  expect(await asked()).toEqual([]);
  for (const hour of [0, 1, 2])
    await queueDueMail(crew.owner, new Date(nineOn(TODAY).getTime() + hour * 3_600_000));
  expect(await asked()).toEqual([`Mail: complaints overdue on ${TODAY}`]);
  await queueDueMail(crew.owner, nineOn(dayAfter(TODAY, 1)));
  expect(await asked()).toHaveLength(1);
  await complain(job, dayAfter(TODAY, -30), dayAfter(TODAY, 1));
  await queueDueMail(crew.owner, nineOn(dayAfter(TODAY, 2)));
  expect(await asked()).toEqual([
    `Mail: complaints overdue on ${dayAfter(TODAY, 2)}`,
    `Mail: complaints overdue on ${TODAY}`,
  ]);
  worker = startWorker(TASKS);
  await until(done, "both have gone");
  expect((await mails()).filter((mail) => mail.includes(callbackId) || mail.includes(job))).toHaveLength(4);
  expect(await overdueCallbacks(crew.owner, dayAfter(TODAY, -5))).toEqual([]);
});

test("the month is asked for once, on its own clock, and comes to owners with the PDF", async () => {
  const year = Number(TODAY.slice(0, 4)) + 1;
  // Half past midnight UTC on the 1st of October is still September in Chicago, and evening.
  await queueDueMail(crew.owner, new Date(`${year}-10-01T00:30:00Z`));
  expect((await work(crew.owner)).map(({ title }) => title)).toEqual([`Mail: the month ${year}-08`]);
  for (const at of ["10-01T14:00:00Z", "10-01T15:00:00Z", "10-17T15:00:00Z"])
    await queueDueMail(crew.owner, new Date(`${year}-${at}`));
  expect((await work(crew.owner)).map(({ title }) => title)).toEqual([
    `Mail: the month ${year}-09`,
    `Mail: the month ${year}-08`,
  ]);
  await mailMonth(crew.owner, { month: "2026-09" });
  await mailMonth(crew.owner, { month: "2026-09" });
  expect(await addressees()).toEqual(["owner"]);
  const [mail] = await mails();
  expect(mail).toContain("filename=month-2026-09-1.pdf");
  // "%PDF-" in base64.
  expect(mail).toContain("JVBERi");
});

test("a company has no digest of a month before it was founded", async () => {
  await queueDueMail(crew.owner, nineOn(TODAY));
  expect(await work(crew.owner)).toEqual([]);
});
