import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import { activity } from "@/lib/db/activity";
import { closeDatabase } from "@/lib/db/client";
import { heldValues } from "@/lib/db/held-values";
import { stageRecords } from "@/lib/db/stage-records";
import { syncReceipts } from "@/lib/db/sync-receipts";
import type { JobId } from "@/lib/domain/ids";
import type { FieldChanges } from "@/lib/domain/merge-fields";
import type { TenantScope } from "@/lib/domain/scope";
import { syncStartup } from "@/lib/services/sync-startup";
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

/** A clock years ahead. */
const DEVICE_TIME = "2031-01-01T00:00:00.000Z";

const send = (scope: TenantScope, fields: FieldChanges, clientId: string = randomUUID()) =>
  syncStartup(scope, { jobId: job, clientId, deviceTime: DEVICE_TIME, fields });
const fromEmpty = (values: Readonly<Record<string, string | number | boolean>>): FieldChanges =>
  Object.fromEntries(Object.entries(values).map(([key, value]) => [key, { base: null, value }]));
const record = async () => given((await stageRecords(crew.owner).latest(job)).startup_record);
const saves = async () =>
  (await activity(crew.owner).list({ jobId: job, take: 100 })).filter(
    (line) => line.action === "Startup record saved",
  ).length;

test("changed fields are merged into the draft; what is as typed is read like the form's", async () => {
  const first = await send(crew.tech, fromEmpty({ outdoorDbF: "91 F", secondAirflowCfm: "1,000" }));
  expect(first).toMatchObject({ version: 1, conflicts: [], problems: [] });
  const second = await send(crew.office, fromEmpty({ supplyVoltage: 240 }));
  expect(second).toMatchObject({
    version: 2,
    inputs: { outdoorDbF: 91, secondAirflowCfm: 1_000, supplyVoltage: 240 },
  });
  expect((await record()).inputs).toMatchObject({ outdoorDbF: 91, supplyVoltage: 240 });
});

test("an upload sent again is told what became of it, and the record as it is by now; it writes nothing", async () => {
  const clientId = randomUUID();
  const mine = fromEmpty({ outdoorDbF: "91 F", favouriteColour: "green" });
  const first = await send(crew.tech, mine, clientId);
  await send(crew.office, { outdoorDbF: { base: 91, value: 93 } });
  const before = await saves();
  const again = await send(crew.tech, mine, clientId);
  expect(first).toMatchObject({ version: 1, accepted: { outdoorDbF: 91 }, inputs: { outdoorDbF: 91 } });
  expect(again).toMatchObject({ version: 2, accepted: { outdoorDbF: 91 }, inputs: { outdoorDbF: 93 } });
  expect(again.problems).toEqual(first.problems);
  expect(first.problems.map((one) => one.field)).toEqual(["favouriteColour"]);
  expect((await record()).inputs.outdoorDbF).toBe(93);
  expect(await saves()).toBe(before);
});

test("the same upload arriving twice at once is kept once", async () => {
  const clientId = randomUUID();
  const twins = await Promise.all(
    Array.from({ length: 4 }, () => send(crew.tech, fromEmpty({ outdoorDbF: 91 }), clientId)),
  );
  for (const twin of twins) expect({ ...twin, serverTime: "" }).toEqual({ ...twins[0], serverTime: "" });
  expect(await saves()).toBe(1);
});

test("an id used for other values, or by another person, is refused", async () => {
  const clientId = randomUUID();
  await send(crew.tech, fromEmpty({ outdoorDbF: 91 }), clientId);
  expect((await refusedBy(send(crew.tech, fromEmpty({ outdoorDbF: 92 }), clientId))).code).toBe("CONFLICT");
  expect((await refusedBy(send(crew.office, fromEmpty({ outdoorDbF: 91 }), clientId))).code).toBe("CONFLICT");
});

test("a field changed on two devices keeps the first and hands back both; the other fields get through", async () => {
  await send(crew.tech, fromEmpty({ outdoorDbF: 91 }));
  const late = await send(crew.office, fromEmpty({ outdoorDbF: 95, supplyVoltage: 238 }));
  expect(late.conflicts).toEqual([{ field: "outdoorDbF", theirs: 91, mine: 95 }]);
  expect((await record()).inputs).toMatchObject({ outdoorDbF: 91, supplyVoltage: 238 });
  const decided = await send(crew.office, { outdoorDbF: { base: 91, value: 95 } });
  expect(decided).toMatchObject({ conflicts: [], inputs: { outdoorDbF: 95 } });
});

test("two devices that entered the same value do not disagree", async () => {
  await send(crew.tech, fromEmpty({ outdoorDbF: 91 }));
  expect((await send(crew.office, fromEmpty({ outdoorDbF: "91.0" }))).conflicts).toEqual([]);
});

test("what cannot be is named by its field; the rest is kept", async () => {
  const answer = await send(
    crew.tech,
    fromEmpty({
      secondReturnWbF: 80,
      secondReturnDbF: 75,
      outdoorDbF: 400,
      refrigerant: "R-999",
      favouriteColour: "green",
      supplyVoltage: 240,
    }),
  );
  const wrong = answer.problems.map((one) => one.field).toSorted();
  expect(wrong).toEqual(["favouriteColour", "outdoorDbF", "refrigerant", "secondReturnDbF"]);
  expect(answer.inputs).toMatchObject({ secondReturnWbF: 80, supplyVoltage: 240, outdoorDbF: null });
});

test("a pair that was swapped arrives together, in either order", async () => {
  await send(crew.tech, fromEmpty({ secondReturnDbF: 76, secondReturnWbF: 63 }));
  const swap = { secondReturnDbF: { base: 76, value: 62 }, secondReturnWbF: { base: 63, value: 60 } };
  expect(await send(crew.tech, swap)).toMatchObject({
    problems: [],
    inputs: { secondReturnDbF: 62, secondReturnWbF: 60 },
  });
});

test("what comes after signing changes nothing and waits for the office, once, however often it is sent", async () => {
  const { version } = await save(crew.tech, job, "startup_record", STARTUP);
  await sign(crew.tech, job, "startup_record", version);
  const clientId = randomUUID();
  const change = { outdoorDbF: { base: 92, value: "90 F" }, secondReturnDbF: { base: null, value: 75 } };
  for (let time = 0; time < 3; time++) {
    expect(await send(crew.tech, change, clientId)).toMatchObject({
      state: "signed",
      waiting: ["outdoorDbF"],
      accepted: { secondReturnDbF: 75 },
      conflicts: [],
    });
  }
  expect((await record()).inputs.outdoorDbF).toBe(92);
  expect(await heldValues(crew.office).waiting(job)).toMatchObject([
    { fieldPath: "outdoorDbF", base: 92, value: 90, reason: "after signing", deviceTime: DEVICE_TIME },
  ]);
});

test("a device whose clock is years off is taken by the server's time; its own is kept beside it", async () => {
  const clientId = randomUUID();
  const answer = await send(crew.tech, fromEmpty({ outdoorDbF: 91 }), clientId);
  expect(Math.abs(Date.parse(answer.serverTime) - Date.now())).toBeLessThan(60_000);
  expect(Math.abs(Date.parse((await record()).updatedAt) - Date.now())).toBeLessThan(60_000);
  const receipt = given(await syncReceipts(crew.tech).find(clientId));
  expect(receipt.response).toMatchObject({ deviceTime: DEVICE_TIME });
});

test("settings as left of both stages and of the thermostat arrive like readings", async () => {
  const left = {
    leftCapacitySetting: "3 tons",
    leftFirstStageAirflowSetting: "B",
    leftSecondStageAirflowSetting: "D",
    leftCoolingSetpointF: 75,
    leftStepBackToFirstStage: true,
  };
  expect((await send(crew.tech, fromEmpty(left))).accepted).toEqual(left);
  expect((await record()).inputs).toMatchObject(left);
});

test("another tech is told what a stranger is told", async () => {
  expect((await refusedBy(send(crew.otherTech, fromEmpty({ outdoorDbF: 91 })))).code).toBe("NOT_FOUND");
});
