import { expect, test } from "vitest";
import type { PlainValue } from "@/lib/domain/merge-fields";
import { seededChance } from "@/lib/engineering/simulation/seeded-draws";
import type { Doors } from "@/lib/offline/doors";
import { answered, emptyDraft, enter, keepMine, refreshed, valuesOf, waiting } from "@/lib/offline/draft";
import { behindBadNetwork } from "../support/bad-network";
import { makePhoneServer } from "../support/phone-server";
import { freshBrowser, JOB, makeTestPhone, NOON } from "../support/test-phone";

const KEYS = ["outdoorDbF", "supplyVoltage", "secondAirflowCfm", "lineSetLengthFt", "notes"];
freshBrowser();

const enterAt = (key: string, value: PlainValue) => (draft: Parameters<typeof enter>[0]) =>
  enter(draft, key, value, NOON);

test.each([1, 20_261_126])(
  "200 rounds over a bad network, with kills, end with the same record and pictures on both sides (seed %i)",
  async (seed) => {
    const random = seededChance(seed);
    const server = makePhoneServer();
    const network = behindBadNetwork(server.doors, random);
    const phone = makeTestPhone();
    const entered: Record<string, PlainValue> = {};
    const taken: string[] = [];
    for (let round = 0; round < 200; round += 1) {
      const key = KEYS[Math.floor(random() * KEYS.length)] ?? "notes";
      const value = key === "notes" ? `note ${round}` : 100 + Math.floor(random() * 20);
      entered[key] = value;
      await phone.change(enterAt(key, value));
      if (random() < 0.1) taken.push((await phone.photo(1_000 + round)).id);
      if (random() < 0.1) phone.kill();
      if (random() < 0.6) await phone.send(network);
    }
    for (let tries = 0; tries < 300 && (await phone.send(network)) !== null; tries += 1) phone.kill();
    expect(waiting(await phone.draft())).toBe(0);
    expect(server.inputs()).toMatchObject(entered);
    expect(valuesOf(await phone.draft())).toMatchObject(entered);
    expect(new Set(server.written).size).toBe(server.written.length);
    expect([...server.photos.keys()].toSorted()).toEqual(taken.toSorted());
    expect(taken.length).toBeGreaterThan(5);
  },
);

test("two phones on one record over a bad network: every disagreement is shown with both values, both end alike", async () => {
  const random = seededChance(7);
  const server = makePhoneServer();
  const network = behindBadNetwork(server.doors, random);
  const phones = [makeTestPhone(), makeTestPhone()] as const;
  let shown = 0;
  for (let round = 0; round < 200; round += 1) {
    const phone = phones[round % 2 === 0 ? 0 : 1];
    const key = KEYS[Math.floor(random() * 4)] ?? "outdoorDbF";
    const value = 100 + Math.floor(random() * 20);
    await phone.change(enterAt(key, value));
    if (random() < 0.6) await phone.send(network);
    for (const [field, pending] of Object.entries((await phone.draft()).pending)) {
      if (pending.held?.why !== "conflict") continue;
      shown += 1;
      expect(pending.held.theirs).not.toBe(pending.value);
      await phone.change((draft) => keepMine(draft, field));
    }
  }
  expect(shown).toBeGreaterThan(0);
  for (const phone of phones) {
    for (let tries = 0; tries < 10; tries += 1) {
      await phone.send(server.doors);
      for (const key of KEYS) await phone.change((draft) => keepMine(draft, key));
    }
    expect(waiting(await phone.draft())).toBe(0);
  }
  // At its next contact each reads the record as it stands.
  for (const phone of phones) {
    await phone.change((draft) => refreshed(draft, server.inputs()));
    expect(valuesOf(await phone.draft())).toEqual(server.inputs());
  }
});

test("a value changed while its upload is unanswered goes out after it, from what was accepted", async () => {
  const server = makePhoneServer();
  const phone = makeTestPhone();
  await phone.change(enterAt("outdoorDbF", "91 F"));
  const answerLost: Doors = {
    ...server.doors,
    sendFields: async (...asked) => {
      await server.doors.sendFields(...asked);
      return { done: false, why: "later", message: "lost" };
    },
  };
  await phone.send(answerLost);
  await phone.change(enterAt("outdoorDbF", "92 F"));
  await phone.send(server.doors);
  expect(server.inputs()).toEqual({ outdoorDbF: 92 });
  expect(server.written).toHaveLength(2);
  expect(waiting(await phone.draft())).toBe(0);
});

test("a refused value waits with its message, the others go, and it goes when it is mended", async () => {
  const server = makePhoneServer();
  const phone = makeTestPhone();
  await phone.change(enterAt("outdoorDbF", 400));
  await phone.change(enterAt("supplyVoltage", 240));
  await phone.send(server.doors);
  expect(server.inputs()).toEqual({ supplyVoltage: 240 });
  expect((await phone.draft()).pending.outdoorDbF?.held).toMatchObject({ why: "problem" });
  await phone.send(server.doors);
  expect(server.written).toHaveLength(1);
  await phone.change(enterAt("outdoorDbF", 91));
  await phone.send(server.doors);
  expect(server.inputs()).toEqual({ outdoorDbF: 91, supplyVoltage: 240 });
});

test("a signature waits until the readings are with the office", async () => {
  const server = makePhoneServer();
  const phone = makeTestPhone();
  await phone.change(enterAt("outdoorDbF", 400));
  const letter = {
    ...{ id: "letter", who: "company.person", jobId: JOB, questionId: null, text: "A. Signer", madeAt: NOON },
    kind: "signature",
    state: { at: "phone" },
  } as const;
  await phone.store().keepLetter(letter);
  await phone.send(server.doors);
  expect(server.letters).toEqual([]);
  await phone.change(enterAt("outdoorDbF", 91));
  await phone.send(server.doors);
  await phone.send(server.doors);
  expect(server.letters).toEqual(["letter"]);
});

test("an answer to another upload changes nothing", () => {
  const draft = enter(emptyDraft({}), "outdoorDbF", 91, NOON);
  expect(
    answered(draft, "not mine", {
      inputs: {},
      accepted: {},
      conflicts: [],
      problems: [],
      waiting: [],
      draftVersion: null,
      bundleTag: null,
    }),
  ).toBe(draft);
});
