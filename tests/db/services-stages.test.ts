import type { Client } from "pg";
import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import { activity } from "@/lib/db/activity";
import { closeDatabase } from "@/lib/db/client";
import { stageRecords } from "@/lib/db/stage-records";
import { withTenant } from "@/lib/db/with-tenant";
import type { JobId } from "@/lib/domain/ids";
import { STAGE_FIELDS } from "@/lib/domain/stages";
import { getJob } from "@/lib/services/jobs";
import { reopenStage } from "@/lib/services/stages";
import { firstBrokenSeq, rowsOfCompany } from "../support/company-rows";
import { connect } from "../support/connect";
import { type Crew, given, makeCrew } from "../support/people";
import { LOAD, openJob, refusedBy, STARTUP, save, sign } from "../support/service-jobs";

let client: Client;
let crew: Crew;
let job: JobId;

beforeAll(async () => {
  client = await connect();
  crew = await makeCrew();
});
beforeEach(async () => {
  job = await openJob(crew.office, { techIds: [crew.tech.userId] });
});
afterAll(async () => {
  await client.end();
  await closeDatabase();
});

const trail = async () => activity(crew.owner).list({ jobId: job, take: 100 });
const load = async () => given((await stageRecords(crew.owner).latest(job)).load_summary);

test("a job is opened with its customer, home, tech and trail, or not at all", async () => {
  const read = await getJob(crew.tech, job);
  expect(read).toMatchObject({ customerName: "Ann Ember", place: "Bay, TX", currentStage: "load_summary" });
  expect(read.home.elevationFt).toBe(30);
  expect(read.techs.map((one) => one.userId)).toEqual([crew.tech.userId]);
  expect((await trail()).map((line) => line.action)).toEqual(["job created"]);

  const before = await rowsOfCompany(client, crew.owner);
  const stranger = (await makeCrew()).tech.userId;
  expect(await refusedBy(openJob(crew.office, { techIds: [stranger] }))).toMatchObject({
    code: "INVALID_INPUT",
    fields: [{ field: "techIds" }],
  });
  const noFile = openJob(crew.office, { weatherFileId: crypto.randomUUID() });
  expect(await refusedBy(noFile)).toMatchObject({
    code: "INVALID_INPUT",
    fields: [{ field: "weatherFileId" }],
  });
  expect(await rowsOfCompany(client, crew.owner)).toEqual(before);
});

test("a tech named twice is assigned once", async () => {
  const id = await openJob(crew.office, { techIds: [crew.tech.userId, crew.tech.userId] });
  expect((await getJob(crew.office, id)).techs).toHaveLength(1);
});

test("a save keeps what was typed, counts the version and names what changed on the trail", async () => {
  expect(await save(crew.office, job, "load_summary", { sensibleCoolingBtuh: "22,000 Btu/h" })).toEqual({
    version: 1,
  });
  expect(await save(crew.office, job, "load_summary", { sensibleCoolingBtuh: 21_000 }, 1)).toEqual({
    version: 2,
  });
  expect((await load()).inputs.sensibleCoolingBtuh).toBe(21_000);
  const [last] = await trail();
  expect(last).toMatchObject({
    action: "Load summary saved",
    before: { sensibleCoolingBtuh: 22_000 },
    after: { sensibleCoolingBtuh: 21_000 },
  });
  expect(await firstBrokenSeq(client, crew.owner)).toBeNull();
});

test("of two people saving the same record the second is shown the first one's values, and nothing is mixed", async () => {
  await save(crew.office, job, "load_summary", { bedrooms: 3 });
  const both = await Promise.allSettled([
    save(crew.office, job, "load_summary", { bedrooms: 4, floorAreaFt2: 1_900 }, 1),
    save(crew.owner, job, "load_summary", { bedrooms: 5, occupants: 6 }, 1),
  ]);
  const officeWon = both[0].status === "fulfilled";
  expect(both.filter((one) => one.status === "fulfilled")).toHaveLength(1);
  const winner = officeWon ? { bedrooms: 4, floorAreaFt2: 1_900 } : { bedrooms: 5, occupants: 6 };
  const refused = both.find((one) => one.status === "rejected")?.reason;
  expect(refused).toMatchObject({ code: "CONFLICT", details: { version: 2, theirs: winner } });
  const kept = await load();
  expect(kept).toMatchObject({ version: 2, inputs: winner });
  expect(kept.inputs[officeWon ? "occupants" : "floorAreaFt2"]).toBeNull();
  expect(await trail()).toHaveLength(3);
});

test("saving again after a lost answer is accepted and writes nothing", async () => {
  const typed = { bedrooms: 3, loadSource: "Worksheet" };
  expect(await save(crew.office, job, "load_summary", typed)).toEqual({ version: 1 });
  const before = await rowsOfCompany(client, crew.owner);
  expect(await save(crew.office, job, "load_summary", typed)).toEqual({ version: 1 });
  expect(await rowsOfCompany(client, crew.owner)).toEqual(before);

  await save(crew.office, job, "load_summary", { ...typed, bedrooms: 4 }, 1);
  expect(await save(crew.office, job, "load_summary", { ...typed, bedrooms: 4 }, 1)).toEqual({ version: 2 });
  const other = save(crew.office, job, "load_summary", { ...typed, bedrooms: 5 }, 1);
  expect(await refusedBy(other)).toMatchObject({ code: "CONFLICT" });
});

test("two people saving two stages at once: the job's lines count both", async () => {
  await Promise.all([
    save(crew.office, job, "load_summary", LOAD),
    save(crew.tech, job, "startup_record", STARTUP),
    save(crew.owner, job, "airflow_setup", { designExternalStaticInWc: 0.5 }),
  ]);
  const lines = () =>
    withTenant(crew.owner, (tx) =>
      tx.ledgerLine.findMany({
        where: { tenantId: crew.owner.tenantId, jobId: job },
        orderBy: { position: "asc" },
        select: { lineKey: true, designed: true, set: true, measured: true, verdict: true },
      }),
    );
  const together = await lines();
  expect(together.some((line) => line.designed !== null)).toBe(true);
  expect(together.some((line) => line.measured !== null)).toBe(true);
  // Saved once more, alone: nothing follows that did not follow before.
  await save(crew.owner, job, "airflow_setup", { designExternalStaticInWc: 0.5, notes: "alone" }, 1);
  expect(await lines()).toEqual(together);
});

test.each([
  ["humidity of 140 %", "startup_record", { secondReturnRhPct: 140 }, "secondReturnRhPct"],
  [
    "a wet bulb above its dry bulb",
    "startup_record",
    { secondReturnDbF: 75, secondReturnWbF: 80 },
    "secondReturnWbF",
  ],
  [
    "supply warmer than return",
    "startup_record",
    { secondReturnDbF: 75, secondSupplyDbF: 80 },
    "secondSupplyDbF",
  ],
  ["airflow in litres a second", "startup_record", { secondAirflowCfm: "400 l/s" }, "secondAirflowCfm"],
  ["a word for a number", "startup_record", { outdoorDbF: "warm" }, "outdoorDbF"],
  ["a number that is none", "startup_record", { outdoorDbF: Number.NaN }, "outdoorDbF"],
  ["a list for a number", "startup_record", { outdoorDbF: [92] }, "outdoorDbF"],
  ["an unknown choice", "startup_record", { refrigerant: "R-999" }, "refrigerant"],
  [
    "an outdoor wet bulb above the temperature",
    "load_summary",
    { outdoorCoolingDbF: 90, outdoorCoolingWbF: 91 },
    "outdoorCoolingWbF",
  ],
  ["an unknown field", "load_summary", { bedrooms: 3, favouriteColour: "green" }, "favouriteColour"],
  ["too long a note", "load_summary", { notes: "x".repeat(2_001) }, "notes"],
] as const)("%s is refused naming the field, and nothing is saved", async (_, stage, inputs, field) => {
  const before = await rowsOfCompany(client, crew.owner);
  const refused = await refusedBy(save(crew.owner, job, stage, inputs));
  expect(refused.code).toBe("INVALID_INPUT");
  expect(refused.fields.map((one) => one.field)).toEqual([field]);
  expect(refused.fields[0]?.message.length).toBeGreaterThan(20);
  expect(await rowsOfCompany(client, crew.owner)).toEqual(before);
});

test("signing names every field that is missing, and signs nothing", async () => {
  await save(crew.office, job, "load_summary", { bedrooms: 3 });
  const before = await rowsOfCompany(client, crew.owner);
  const refused = await refusedBy(sign(crew.office, job, "load_summary", 1));
  const needed = Object.keys(LOAD).filter((key) => key !== "bedrooms");
  expect(refused.code).toBe("INVALID_INPUT");
  expect(refused.fields.map((one) => one.field).toSorted()).toEqual(needed.toSorted());
  for (const { field, message } of refused.fields) {
    expect(message).toContain(STAGE_FIELDS.load_summary[field]?.label ?? "no label");
  }
  expect(await rowsOfCompany(client, crew.owner)).toEqual(before);
});

test("a signed record takes no save; reopened with a reason it goes on as revision 2, and revision 1 stays", async () => {
  await save(crew.office, job, "load_summary", LOAD);
  await sign(crew.office, job, "load_summary", 1);
  const change = { ...LOAD, bedrooms: 4 };
  for (const version of [null, 1, 2]) {
    const refused = await refusedBy(save(crew.office, job, "load_summary", change, version));
    expect(refused.code).toBe("SIGNED_RECORD");
  }
  const reopened = await reopenStage(crew.office, {
    jobId: job,
    stage: "load_summary",
    reason: "A new room",
  });
  expect(await refusedBy(save(crew.office, job, "load_summary", change, 1))).toMatchObject({
    code: "CONFLICT",
  });
  await save(crew.office, job, "load_summary", change, reopened.version);
  const revisions = await stageRecords(crew.owner).revisions(job, "load_summary");
  expect(revisions).toMatchObject([
    { revision: 2, state: "draft", reopenReason: "A new room", inputs: { bedrooms: 4 } },
    { revision: 1, state: "signed", signatureName: "A. Signer", inputs: { bedrooms: 3 } },
  ]);
  const again = reopenStage(crew.office, { jobId: job, stage: "load_summary", reason: "Once more" });
  expect(await refusedBy(again)).toMatchObject({ code: "CONFLICT" });
  expect((await trail()).map((line) => [line.action, line.reason])).toEqual([
    ["Load summary saved", null],
    ["Load summary reopened", "A new room"],
    ["Load summary signed", null],
    ["Load summary saved", null],
    ["job created", null],
  ]);
  expect(await firstBrokenSeq(client, crew.owner)).toBeNull();
});

test("an assigned tech fills in and signs the startup; another one is told what a stranger is told", async () => {
  const strangersJob = crypto.randomUUID();
  for (const attempt of [
    (id: string) => getJob(crew.otherTech, id),
    (id: string) => save(crew.otherTech, id, "startup_record", STARTUP),
    (id: string) => sign(crew.otherTech, id, "startup_record", 1),
  ]) {
    const [theirs, nobodys] = [await refusedBy(attempt(job)), await refusedBy(attempt(strangersJob))];
    expect(theirs).toMatchObject({ code: "NOT_FOUND", message: nobodys.message });
  }
  const { version } = await save(crew.tech, job, "startup_record", STARTUP);
  await sign(crew.tech, job, "startup_record", version);
  const { startup_record } = await stageRecords(crew.tech).latest(job);
  expect(startup_record).toMatchObject({ state: "signed", revision: 1 });
  expect((await stageRecords(crew.otherTech).latest(job)).startup_record).toBeNull();
});
