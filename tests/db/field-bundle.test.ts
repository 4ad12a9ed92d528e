import { randomUUID } from "node:crypto";
import { readFileSync } from "node:fs";
import { afterAll, beforeAll, expect, test } from "vitest";
import { catalog } from "@/lib/db/catalog";
import { closeDatabase } from "@/lib/db/client";
import { fieldContacts } from "@/lib/db/field-contacts";
import { evaluateJob } from "@/lib/domain/evaluate";
import { APP_VERSION, bundleTagWith, contextOfFieldJob, type FieldBundle } from "@/lib/domain/field-bundle";
import type { JobId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { fieldBundle } from "@/lib/services/field-bundle";
import { jobView } from "@/lib/services/job-view";
import { getJob } from "@/lib/services/jobs";
import { scheduleJob } from "@/lib/services/plan-job";
import { answerQuestion, askQuestion, closeQuestion } from "@/lib/services/questions";
import { syncStartup } from "@/lib/services/sync-startup";
import { twoStageHeatPump } from "@/seed/catalog/equipment";
import { type Crew, given, makeCrew } from "../support/people";
import { LOAD, openJob, refusedBy, STARTUP, save } from "../support/service-jobs";

let crew: Crew;
let mine: JobId;
let others: JobId;

beforeAll(async () => {
  crew = await makeCrew();
  mine = await openJob(crew.office, { techIds: [crew.tech.userId] });
  others = await openJob(crew.office, { techIds: [crew.otherTech.userId] });
  const modelId = await catalog(crew.office).addEquipment(twoStageHeatPump);
  await save(crew.office, mine, "load_summary", LOAD);
  await save(crew.office, mine, "equipment_selection", {
    equipmentModelId: modelId,
    capacitySetting: "3 tons",
  });
  await save(crew.office, mine, "startup_record", STARTUP);
});
afterAll(closeDatabase);

/** As it arrives at the phone: through JSON. */
async function bundleOf(scope: TenantScope): Promise<FieldBundle> {
  return JSON.parse(JSON.stringify((await fieldBundle(scope, null)).bundle));
}
const tagOf = async (scope: TenantScope) => (await fieldBundle(scope, null)).etag;

test("the release in the bundle is that of package.json", () => {
  expect(APP_VERSION).toBe(JSON.parse(readFileSync("package.json", "utf8")).version);
});

test("it holds this person's jobs and no word of another's, for the office as well", async () => {
  const bundle = await bundleOf(crew.tech);
  expect(bundle.jobs.map((job) => job.id)).toEqual([mine]);
  expect(JSON.stringify(bundle)).not.toContain(others);
  expect((await bundleOf(crew.office)).jobs).toEqual([]);
});

test("the phone computes from it what the server computes", async () => {
  const bundle = await bundleOf(crew.tech);
  const onPhone = evaluateJob(contextOfFieldJob(bundle, given(bundle.jobs[0])));
  const { evaluation } = await jobView(crew.office, mine);
  expect(evaluation.findings.startup_record.length).toBeGreaterThan(3);
  // JSON knows no minus zero.
  expect(JSON.stringify(onPhone.findings)).toBe(JSON.stringify(evaluation.findings));
});

test("an unchanged bundle is only its tag, also with the mark a proxy adds; any change gives another tag", async () => {
  const tag = await tagOf(crew.tech);
  expect(await fieldBundle(crew.tech, tag)).toEqual({ etag: tag, bundle: null });
  expect((await fieldBundle(crew.tech, `W/${tag}`)).bundle).toBeNull();
  const clientId = randomUUID();
  const deviceTime = "2026-07-01T12:00:00.000Z";
  const fields = { supplyVoltage: { base: null, value: 239 } };
  await syncStartup(crew.tech, { jobId: mine, clientId, deviceTime, fields });
  const afterReading = await tagOf(crew.tech);
  await askQuestion(crew.office, { jobId: mine, fieldPath: "outdoorDbF", text: "In the shade?" });
  const afterQuestion = await tagOf(crew.tech);
  expect(new Set([tag, afterReading, afterQuestion]).size).toBe(3);
});

test("a phone's own upload says whether anything else is new; its tag with the new version is the bundle's", async () => {
  const deviceTime = "2026-07-01T12:00:00.000Z";
  let base: string | null = null;
  /** Sends another reading with the tag the phone holds, and answers the tag it makes of the answer, and the office's. */
  const send = async (known: string, value: string) => {
    const upload = { jobId: mine, clientId: randomUUID(), deviceTime, bundleTag: known };
    const answer = await syncStartup(crew.tech, { ...upload, fields: { notes: { base, value } } });
    base = value;
    return { own: bundleTagWith(known, 0, answer.version ?? 0), office: answer.bundleTag };
  };
  const first = await tagOf(crew.tech);
  const sent = await send(first, "hot");
  expect(sent.own).not.toBe(first);
  expect(sent.office).toBe(sent.own);
  expect(await fieldBundle(crew.tech, sent.own)).toEqual({ etag: sent.own, bundle: null });
  // Another device saved between: the answer's record holds both, so the version alone brings nothing new.
  await syncStartup(crew.office, {
    ...{ jobId: mine, clientId: randomUUID(), deviceTime },
    fields: { outdoorUnitAmps: { base: null, value: 11 } },
  });
  expect(await tagOf(crew.tech)).not.toBe(sent.own);
  const again = await send(given(sent.own), "hotter");
  expect(again.office).toBe(again.own);
  // What the office says meanwhile is news.
  await askQuestion(crew.office, {
    jobId: mine,
    fieldPath: "supplyVoltage",
    text: "Both legs?",
  });
  const late = await send(given(again.own), "cooler");
  expect(late.office).not.toBe(late.own);
  const asked = (await fieldBundle(crew.tech, late.own)).bundle?.jobs[0]?.questions ?? [];
  const question = given(asked.find((one) => one.fieldPath === "supplyVoltage"));
  await closeQuestion(crew.office, { jobId: mine, questionId: question.id });
  expect(bundleTagWith("an old server's tag", 0, 1)).toBeNull();
});

test("a question reaches the phone; its answer is kept once, may be bettered by its author, and ends when closed", async () => {
  const asked = given((await bundleOf(crew.tech)).jobs[0]?.questions[0]);
  expect(asked).toMatchObject({ text: "In the shade?", fieldPath: "outdoorDbF", answer: null });
  const sent = { jobId: mine, questionId: asked.id, deviceTime: "2026-07-01T12:00:00.000Z" };
  const clientId = randomUUID();
  const first = await answerQuestion(crew.tech, { ...sent, clientId, answer: "Yes" });
  expect(await answerQuestion(crew.tech, { ...sent, clientId, answer: "Yes" })).toEqual(first);
  const elsewhere = answerQuestion(crew.office, { ...sent, clientId: randomUUID(), answer: "No" });
  expect(await refusedBy(elsewhere)).toMatchObject({
    code: "CONFLICT",
    details: { theirs: "Yes", mine: "No" },
  });
  const better = { ...sent, clientId: randomUUID(), answer: "Yes, north side" };
  expect((await answerQuestion(crew.tech, better)).answer).toBe("Yes, north side");
  // A late repeat of the first answer is no change of mind.
  expect((await refusedBy(answerQuestion(crew.otherTech, better))).code).toBe("NOT_FOUND");
  await closeQuestion(crew.office, { jobId: mine, questionId: asked.id });
  expect((await bundleOf(crew.tech)).jobs[0]?.questions).toEqual([]);
});

test("unassigned, the job is gone from the next bundle; that the phone had it is remembered", async () => {
  const { version } = await getJob(crew.office, mine);
  const plan = { jobId: mine, expectedVersion: version, startupDue: null, reviewDue: null };
  await scheduleJob(crew.office, { ...plan, techIds: [] });
  expect((await bundleOf(crew.tech)).jobs).toEqual([]);
  expect(await fieldContacts(crew.tech).had([mine, others])).toEqual([mine]);
});
