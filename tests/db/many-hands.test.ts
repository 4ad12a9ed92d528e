import { randomUUID } from "node:crypto";
import type { Client } from "pg";
import { afterAll, beforeAll, expect, test } from "vitest";
import { catalog } from "@/lib/db/catalog";
import { closeDatabase } from "@/lib/db/client";
import { stageRecords } from "@/lib/db/stage-records";
import type { EquipmentModelId, JobId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { STAGES, type StageKey } from "@/lib/domain/stages";
import { AppError, notFound } from "@/lib/errors";
import { undoVersion } from "@/lib/services/catalog-edit";
import { moveJobToVersion } from "@/lib/services/catalog-jobs";
import { chooseOption } from "@/lib/services/choose-option";
import { deriveJob, evaluateRecords } from "@/lib/services/evaluate";
import { getJob } from "@/lib/services/jobs";
import { judgeJob } from "@/lib/services/judge-again";
import { decideLateValue, lateReadings } from "@/lib/services/late-readings";
import { addOption, moveOption, optionsView, removeOption, saveOption } from "@/lib/services/options";
import { scheduleJob } from "@/lib/services/plan-job";
import { changeLimit } from "@/lib/services/rules";
import { reopenStage } from "@/lib/services/stages";
import { syncStartup } from "@/lib/services/sync-startup";
import { twoStageHeatPump } from "@/seed/catalog/equipment";
import { firstBrokenSeq } from "../support/company-rows";
import { connect, inRole } from "../support/connect";
import { addMember, type Crew, given, makeCrew } from "../support/people";
import { LOAD, openJob, STARTUP, save, sign } from "../support/service-jobs";

/** What several people do to one job at once, in an order that no test can foresee: laws that hold whatever it was. */
const STEPS = Number(process.env.DEWLEDGER_RANDOM_RUNS ?? 60);
const AT_ONCE = 9;

let client: Client;
let crew: Crew;
let office2: TenantScope;
let jobId: JobId;
let models: readonly EquipmentModelId[];

beforeAll(async () => {
  client = await connect();
  crew = await makeCrew();
  office2 = await addMember(crew.owner.tenantId, "office");
  jobId = await openJob(crew.office, { techIds: [crew.tech.userId] });
  const first = await catalog(crew.office).addEquipment(twoStageHeatPump);
  const { familyId } = given(await catalog(crew.office).findEquipment(first));
  models = [
    first,
    await catalog(crew.office).addEquipment({ ...twoStageHeatPump, familyId, sourceNote: "newer" }),
  ];
  await save(crew.office, jobId, "load_summary", LOAD);
  await save(crew.office, jobId, "equipment_selection", { equipmentModelId: first });
  await save(crew.tech, jobId, "startup_record", STARTUP);
  await addOption(crew.office, { jobId, label: "One", copyOf: null });
  await addOption(crew.office, { jobId, label: "Two", copyOf: null });
}, 60_000);
afterAll(async () => {
  await client.end();
  await closeDatabase();
});

/** Numbers of chance that are the same in every run (mulberry32); what happens at once still is not. */
function chance(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) % below;
  };
}

type Told = {
  readonly stage: StageKey;
  readonly field: string;
  readonly value: number;
  readonly version: number;
};
const told: Told[] = [];
const sent: { readonly field: string; readonly value: number; readonly waiting: boolean }[] = [];

async function saveField(who: TenantScope, stage: StageKey, field: string, value: number) {
  const record = (await stageRecords(who).latest(jobId))[stage];
  const inputs = { ...record?.inputs, [field]: value };
  const { version } = await save(who, jobId, stage, inputs, record?.version ?? null);
  told.push({ stage, field, value, version });
}
async function versionOf(who: TenantScope, stage: StageKey): Promise<number> {
  const record = (await stageRecords(who).latest(jobId))[stage];
  // A tech who is no longer assigned sees none.
  if (!record) throw notFound();
  return record.version;
}

/** Everything that two people in the office and a tech can do to one job. */
function deeds(pick: (below: number) => number, n: number): readonly (() => Promise<unknown>)[] {
  const { owner, office, tech } = crew;
  const desk = pick(2) === 0 ? office : office2;
  const option = async () => {
    const { options } = await optionsView(desk, jobId);
    const option = options[pick(options.length)];
    if (option === undefined) throw notFound();
    return option;
  };
  return [
    () => saveField(desk, "load_summary", "sensibleCoolingBtuh", 20_000 + n),
    () => saveField(desk, "load_summary", "latentCoolingBtuh", 5_000 + n),
    () => saveField(tech, "startup_record", "outdoorDbF", 80 + n / 100),
    async () => {
      const field = pick(2) === 0 ? "secondAirflowCfm" : "secondReturnDbF";
      const value = field === "secondAirflowCfm" ? 900 + n : 75 + n / 1_000;
      const base = (await stageRecords(tech).latest(jobId)).startup_record?.inputs[field] ?? null;
      const { accepted, waiting } = await syncStartup(tech, {
        jobId,
        clientId: randomUUID(),
        deviceTime: "2026-07-01T12:00:00.000Z",
        fields: { [field]: { base, value } },
      });
      if (accepted[field] === value || waiting.includes(field))
        sent.push({ field, value, waiting: waiting.includes(field) });
    },
    async () => sign(desk, jobId, "load_summary", await versionOf(desk, "load_summary")),
    async () => sign(tech, jobId, "startup_record", await versionOf(tech, "startup_record")),
    () => reopenStage(desk, { jobId, stage: "load_summary", reason: `Look again ${n}` }),
    () => reopenStage(desk, { jobId, stage: "startup_record", reason: `Measure again ${n}` }),
    async () => {
      const copyOf = (await option()).id;
      await addOption(desk, { jobId, label: `Option ${n}`, copyOf });
    },
    async () => {
      const { id, version, inputs } = await option();
      await saveOption(desk, { jobId, optionId: id, expectedVersion: version, label: `Named ${n}`, inputs });
    },
    async () => removeOption(desk, { jobId, optionId: (await option()).id }),
    async () => moveOption(desk, { jobId, optionId: (await option()).id, by: pick(2) === 0 ? 1 : -1 }),
    async () => {
      const { id, version } = await option();
      await chooseOption(desk, {
        jobId,
        optionId: id,
        expectedVersion: version,
        reason: `Because ${n}`,
        reopenSigned: true,
      });
    },
    async () => {
      const { version } = await getJob(desk, jobId);
      const techIds = pick(3) === 0 ? [crew.otherTech.userId] : [tech.userId];
      await scheduleJob(desk, {
        jobId,
        expectedVersion: version,
        startupDue: "2026-07-01",
        reviewDue: null,
        techIds,
      });
    },
    async () =>
      moveJobToVersion(desk, {
        jobId,
        expectedVersion: await versionOf(desk, "equipment_selection"),
        versionId: given(models[pick(2)]),
      }),
    () => judgeJob(owner, jobId),
    () => changeLimit(owner, { key: "airflow.goodPct", value: String(10 + (n % 10)), reason: "Try" }),
    async () => {
      const [late] = (await lateReadings(desk, jobId)).values;
      if (late) await decideLateValue(desk, { jobId, id: late.id, take: pick(2) === 0 });
    },
    () => undoVersion(desk, given(models[1])),
  ];
}

test("whatever several people do to one job at once, nothing acknowledged is lost and all of it agrees", async () => {
  const pick = chance(20_260_701);
  const strange: unknown[] = [];
  let [next, done] = [0, 0];
  const hand = async () => {
    while (next < STEPS) {
      const n = next++;
      const all = deeds(pick, n);
      try {
        await given(all[pick(all.length)])();
        done++;
      } catch (error) {
        if (!(error instanceof AppError) || error.code === "UNAVAILABLE") strange.push(error);
      }
    }
  };
  await saveField(crew.office, "load_summary", "sensibleCoolingBtuh", 19_999);
  await Promise.all(Array.from({ length: AT_ONCE }, hand));
  expect(strange).toEqual([]);
  // How many get through is the moment's; that none does would test nothing.
  expect(done).toBeGreaterThan(5);

  expect(await firstBrokenSeq(client, crew.owner)).toBeNull();
  const { owner } = crew;
  const job = await getJob(owner, jobId);
  const records = await stageRecords(owner).latest(jobId);
  for (const stage of STAGES) {
    const revisions = await stageRecords(owner).revisions(jobId, stage);
    expect(revisions.map((one) => one.revision)).toEqual(
      Array.from({ length: revisions.length }, (_, at) => revisions.length - at),
    );
    // Each version was given to one save only.
    const versions = told.filter((one) => one.stage === stage).map((one) => one.version);
    expect(new Set(versions).size).toBe(versions.length);
  }
  // Each value that somebody was told is kept stands on the trail, in what the record said before or after.
  const trail = await inRole(client, "app_user", owner, async () => {
    const { rows } = await client.query<{ said: string }>(
      "SELECT after::text AS said FROM activity WHERE job_id = $1 AND after IS NOT NULL",
      [jobId],
    );
    return rows.map((row) => row.said.replaceAll(" ", ""));
  });
  const isTold = (field: string, value: number) => trail.some((said) => said.includes(`"${field}":${value}`));
  expect(told.filter((one) => !isTold(one.field, one.value))).toEqual([]);
  expect(sent.filter((one) => !one.waiting && !isTold(one.field, one.value))).toEqual([]);
  // And the last one of each field is what the record holds, unless a late value was taken over it.
  for (const field of ["sensibleCoolingBtuh", "latentCoolingBtuh"] as const) {
    const last = told.filter((one) => one.field === field).toSorted((a, b) => b.version - a.version)[0];
    if (last) expect(records.load_summary?.inputs[field]).toBe(last.value);
  }

  await judgeJob(owner, jobId);
  const derived = deriveJob(job, records, await evaluateRecords(owner, job, records));
  expect((await getJob(owner, jobId)).verdict).toBe(derived.verdict);
  const { options } = await optionsView(owner, jobId);
  expect(options.map((one) => one.position)).toEqual(options.map((_, at) => at));
}, 120_000);
