import { afterAll, beforeAll, expect, test } from "vitest";
import { activity } from "@/lib/db/activity";
import { closeDatabase } from "@/lib/db/client";
import { stageRecords } from "@/lib/db/stage-records";
import type { JobId } from "@/lib/domain/ids";
import type { PlainValue } from "@/lib/domain/merge-fields";
import { seededChance } from "@/lib/engineering/simulation/seeded-draws";
import type { Doors } from "@/lib/offline/doors";
import { enter, keepMine, refreshed, valuesOf, waiting } from "@/lib/offline/draft";
import { readUploadAnswer } from "@/lib/offline/read-answers";
import { syncStartup } from "@/lib/services/sync-startup";
import { behindBadNetwork } from "../support/bad-network";
import { type Crew, given, makeCrew } from "../support/people";
import { makePhoneServer } from "../support/phone-server";
import { openJob } from "../support/service-jobs";
import { freshBrowser, makeTestPhone, NOON } from "../support/test-phone";

const ROUNDS = 200;
const LEAST: Readonly<Record<string, number>> = {
  outdoorDbF: 60,
  supplyVoltage: 200,
  secondAirflowCfm: 700,
  outdoorUnitAmps: 5,
};
const KEYS = Object.keys(LEAST);

let crew: Crew;
let job: JobId;

beforeAll(async () => {
  freshBrowser();
  crew = await makeCrew();
  job = await openJob(crew.office, { techIds: [crew.tech.userId] });
});
afterAll(closeDatabase);

/** The real merge and the real database; the answer travels as text and is read as the phone reads it. */
const doors: Doors = {
  ...makePhoneServer().doors,
  sendFields: async (_who, _jobId, upload, left) => {
    const clientId = uuidOf(upload.clientId);
    const answer = await syncStartup(crew.tech, { ...upload, clientId, jobId: job, waiting: left });
    const value = readUploadAnswer(JSON.parse(JSON.stringify(answer)));
    return value === null ? { done: false, why: "later", message: "unreadable" } : { done: true, value };
  },
};

/** The test's phones count their ids; the server takes UUIDs. */
const uuids = new Map<string, string>();
function uuidOf(id: string): string {
  const known = uuids.get(id) ?? crypto.randomUUID();
  uuids.set(id, known);
  return known;
}

test(`${ROUNDS} rounds of two phones, killed now and then, over a bad network: one record, each upload saved once`, async () => {
  const random = seededChance(20_261_126);
  const network = behindBadNetwork(doors, random);
  const phones = [makeTestPhone(), makeTestPhone()] as const;
  let shown = 0;
  const decide = async (phone: (typeof phones)[number]) => {
    for (const [key, pending] of Object.entries((await phone.draft()).pending)) {
      if (pending.held?.why !== "conflict") continue;
      shown += 1;
      expect(pending.held.theirs).not.toBe(pending.value);
      await phone.change((draft) => keepMine(draft, key));
    }
  };
  for (let round = 0; round < ROUNDS; round += 1) {
    const phone = phones[round % 2 === 0 ? 0 : 1];
    const key = KEYS[Math.floor(random() * KEYS.length)] ?? "outdoorDbF";
    const value: PlainValue = (LEAST[key] ?? 0) + Math.floor(random() * 30);
    await phone.change((draft) => enter(draft, key, value, NOON));
    if (random() < 0.1) phone.kill();
    if (random() < 0.6) await phone.send(network);
    await decide(phone);
  }
  expect(shown).toBeGreaterThan(0);
  for (const phone of phones) {
    for (let tries = 0; tries < 10; tries += 1) {
      await phone.send(doors);
      await decide(phone);
    }
    expect(waiting(await phone.draft())).toBe(0);
  }
  const record = given((await stageRecords(crew.owner).latest(job)).startup_record);
  const held = Object.fromEntries(KEYS.map((key) => [key, record.inputs[key as keyof typeof record.inputs]]));
  for (const phone of phones) {
    await phone.change((draft) => refreshed(draft, record.inputs));
    expect(valuesOf(await phone.draft())).toMatchObject(held);
  }
  // The trail tells of each change of the record once: as many saves as versions.
  const lines = await activity(crew.owner).list({ jobId: job, take: 1_000 });
  expect(lines.filter((line) => line.action === "Startup record saved")).toHaveLength(record.version);
}, 120_000);
