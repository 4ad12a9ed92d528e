import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import { activity } from "@/lib/db/activity";
import { closeDatabase } from "@/lib/db/client";
import { withTenant } from "@/lib/db/with-tenant";
import type { JobId } from "@/lib/domain/ids";
import { acrossJobsSchema } from "@/lib/schemas/across-jobs";
import { workCallbackSchema } from "@/lib/schemas/callback";
import { comparison } from "@/lib/services/across-jobs";
import { jobCallbacks, logCallback, workOnCallback } from "@/lib/services/callbacks";
import { type Crew, given, makeCrew } from "../support/people";
import { openJob, refusedBy, STARTUP, save, sign } from "../support/service-jobs";

let crew: Crew;
let job: JobId;

beforeAll(async () => {
  crew = await makeCrew();
});
beforeEach(async () => {
  job = await openJob(crew.office, { techIds: [crew.tech.userId] });
});
afterAll(closeDatabase);

const humid = (jobId: string) => ({
  jobId,
  kind: "too_humid" as const,
  reportedOn: "2026-08-03",
  reportedByName: "Ann",
  complaint: "Sticky every evening",
});
const facts = () =>
  withTenant(crew.owner, (tx) =>
    tx.jobFact.findFirst({
      where: { tenantId: crew.owner.tenantId, jobId: job },
      select: { callbackCount: true, openCallbackCount: true, humidityComplaintCount: true },
    }),
  );

test("a complaint is counted in the job's facts and stands on the trail; settings are kept beside it", async () => {
  await save(crew.office, job, "airflow_setup", { secondStageAirflowSetting: "tap 4" });
  await logCallback(crew.office, humid(job));
  await logCallback(crew.office, { ...humid(job), kind: "noise" });
  expect(await facts()).toEqual({ callbackCount: 2, openCallbackCount: 2, humidityComplaintCount: 1 });
  const [first] = await jobCallbacks(crew.owner, job);
  expect(first?.evidence.settings).toEqual(["Second-stage airflow setting: tap 4"]);
  const lines = await activity(crew.owner).list({ jobId: job, take: 10 });
  expect(lines.filter((line) => line.action === "callback logged")).toHaveLength(2);
});

test("two complaints at once are both counted", async () => {
  await save(crew.office, job, "airflow_setup", { designExternalStaticInWc: 0.5 });
  await Promise.all([logCallback(crew.office, humid(job)), logCallback(crew.owner, humid(job))]);
  expect(await facts()).toMatchObject({ callbackCount: 2, humidityComplaintCount: 2 });
});

test("a complaint before anything was saved is counted once there are facts", async () => {
  await logCallback(crew.office, humid(job));
  expect(await facts()).toBeNull();
  await save(crew.office, job, "airflow_setup", { designExternalStaticInWc: 0.5 });
  expect(await facts()).toMatchObject({ callbackCount: 1, humidityComplaintCount: 1 });
});

test("a fix that worked closes it, one that did not opens it again, and an old version is refused", async () => {
  await save(crew.office, job, "airflow_setup", { designExternalStaticInWc: 0.5 });
  const callbackId = await logCallback(crew.office, humid(job));
  const work = (expectedVersion: number, given: object) =>
    workOnCallback(
      crew.office,
      workCallbackSchema.parse({
        callbackId,
        expectedVersion,
        cause: "Fan on",
        fix: "Fan off",
        fixedOn: "2026-08-05",
        outcome: "",
        outcomeNote: "",
        outcomeCheckedOn: "",
        ...given,
      }),
    );
  const state = async () => given((await jobCallbacks(crew.owner, job))[0]).state;
  await work(1, {});
  expect(await state()).toBe("fixed");
  expect((await refusedBy(work(1, {}))).code).toBe("CONFLICT");
  await work(2, { outcome: "worked", outcomeCheckedOn: "2026-09-01", signOutcome: "on" });
  expect([await state(), (await facts())?.openCallbackCount]).toEqual(["closed", 0]);
  await work(3, { outcome: "did_not_work", outcomeCheckedOn: "2026-09-20", signOutcome: "on" });
  expect([await state(), (await facts())?.openCallbackCount]).toEqual(["open", 1]);
});

test("an outcome stands under the name of who checked it, and no other outcome does without signing anew", async () => {
  const callbackId = await logCallback(crew.office, humid(job));
  const work = (scope: Crew["office"], expectedVersion: number, given: object) =>
    workOnCallback(
      scope,
      workCallbackSchema.parse({
        callbackId,
        expectedVersion,
        cause: "Fan on",
        fix: "Fan off",
        fixedOn: "2026-08-05",
        outcome: "partly",
        outcomeNote: "",
        outcomeCheckedOn: "2026-08-20",
        ...given,
      }),
    );
  const signed = async () => given((await jobCallbacks(crew.owner, job))[0]).outcomeSigned;
  expect((await refusedBy(work(crew.office, 1, {}))).fields).toMatchObject([{ field: "signOutcome" }]);
  await work(crew.office, 1, { signOutcome: "on" });
  const first = given(await signed());
  expect(first.by).toMatch(/^office /);
  // Another field changes: the signature stays who it was.
  await work(crew.owner, 2, { cause: "Fan on all day" });
  expect(await signed()).toEqual(first);
  expect((await refusedBy(work(crew.owner, 3, { outcomeNote: "Better" }))).fields).toMatchObject([
    { field: "signOutcome" },
  ]);
  await work(crew.owner, 3, { outcomeNote: "Better", signOutcome: "on" });
  expect(given(await signed()).by).toMatch(/^owner /);
  await work(crew.owner, 4, { outcome: "", outcomeCheckedOn: "" });
  expect(await signed()).toBeNull();
});

test("an outcome without a fix or a day is refused naming the fields", () => {
  const refused = workCallbackSchema.safeParse({
    callbackId: crypto.randomUUID(),
    expectedVersion: 1,
    cause: "",
    fix: "",
    fixedOn: "",
    outcome: "worked",
    outcomeNote: "",
    outcomeCheckedOn: "",
  });
  expect(refused.error?.issues.map((issue) => issue.path.join("."))).toEqual(["fix", "outcomeCheckedOn"]);
});

test("across jobs counts jobs with a signed startup only, each once, and never another company's", async () => {
  const mine = await makeCrew();
  const made = async (tap: string, complaints: number, signed: boolean) => {
    const id = await openJob(mine.office, { techIds: [mine.tech.userId] });
    await save(mine.office, id, "airflow_setup", { secondStageAirflowSetting: tap });
    const { version } = await save(mine.tech, id, "startup_record", STARTUP);
    if (signed) await sign(mine.tech, id, "startup_record", version);
    for (let count = 0; count < complaints; count++) await logCallback(mine.office, humid(id));
    return id;
  };
  const twice = await made("tap 4", 2, true);
  await made("tap 4", 0, true);
  await made("tap 2", 0, true);
  await made("tap 4", 1, false);
  const asked = acrossJobsSchema.parse({ value: "tap 4" });
  const view = await comparison(mine.owner, { ...asked, by: "secondStageAirflowSetting" });
  expect(view.groups.map(({ value, jobs, complaints }) => [value, jobs, complaints])).toEqual([
    ["tap 4", 2, 1],
    ["tap 2", 1, 0],
  ]);
  expect(view.chosen?.jobs.map((one) => [one.jobId === twice, one.humidityComplaints])).toEqual([
    [true, 2],
    [false, 0],
  ]);
  const people = await comparison(mine.owner, { ...acrossJobsSchema.parse({}), by: "techId" });
  expect(people.groups).toMatchObject([{ value: mine.tech.userId, jobs: 3, share: null }]);
});
