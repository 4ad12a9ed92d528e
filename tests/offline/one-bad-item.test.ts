import { expect, test } from "vitest";
import type { Doors } from "@/lib/offline/doors";
import { emptyDraft, enter, waiting } from "@/lib/offline/draft";
import { handOverJob } from "@/lib/offline/hand-over";
import { makePhoneServer } from "../support/phone-server";
import { freshBrowser, JOB, makeTestPhone, NOON, WHO } from "../support/test-phone";

freshBrowser();

const OTHER = "01900000-0000-7000-8000-000000000002";
const TOO_LONG = "x".repeat(20);
const enterAt = (key: string, value: string | number) => (draft: Parameters<typeof enter>[0]) =>
  enter(draft, key, value, NOON);
const no = (why: "refused" | "failed", message: string) => ({ done: false, why, message }) as const;

/** An office that refuses a request as a whole for one text in it, before it looks at anything else. */
function refusing(doors: Doors): Doors {
  return {
    ...doors,
    sendFields: async (...asked) =>
      Object.values(asked[2].fields).some((one) => one.value === TOO_LONG)
        ? no("refused", "Notes are too long.")
        : doors.sendFields(...asked),
    handOver: async (who, what) =>
      what.jobs.some((job) => Object.values(job.fields).some((one) => one.value === TOO_LONG))
        ? no("refused", "Too long.")
        : doors.handOver(who, what),
  };
}

test("one entry that makes the office refuse the whole upload holds no other back, and says why", async () => {
  const server = makePhoneServer();
  const phone = makeTestPhone();
  await phone.change(enterAt("outdoorDbF", 91));
  await phone.change(enterAt("notes", TOO_LONG));
  await phone.change(enterAt("supplyVoltage", 240));
  expect(await phone.send(refusing(server.doors))).toBeNull();
  expect(server.inputs()).toEqual({ outdoorDbF: 91, supplyVoltage: 240 });
  expect((await phone.draft()).pending).toMatchObject({
    notes: { value: TOO_LONG, held: { why: "problem", message: "Notes are too long." } },
  });
  // Mended it goes, and nothing went twice.
  await phone.change(enterAt("notes", "short"));
  await phone.send(refusing(server.doors));
  expect(server.inputs()).toMatchObject({ notes: "short" });
  expect(waiting(await phone.draft())).toBe(0);
});

test("an office that refuses everything blames no entry: they wait as they are, and it is said", async () => {
  const phone = makeTestPhone();
  await phone.change(enterAt("outdoorDbF", 91));
  await phone.change(enterAt("supplyVoltage", 240));
  const doors = { ...makePhoneServer().doors, sendFields: async () => no("refused", "Load the page again.") };
  expect(await phone.send(doors)).toMatchObject({ why: "refused", message: "Load the page again." });
  expect(Object.values((await phone.draft()).pending).map((one) => one.held)).toEqual([null, null]);
});

test("a job that the office fails on does not keep other jobs, pictures and answers waiting", async () => {
  const server = makePhoneServer();
  const phone = makeTestPhone();
  await phone.change(enterAt("outdoorDbF", 91));
  await phone
    .store()
    .changeDraft(WHO, OTHER, (old) => enter(old ?? emptyDraft({}), "supplyVoltage", 240, NOON));
  const photo = await phone.photo(100);
  let isBroken = true;
  const doors: Doors = {
    ...server.doors,
    sendFields: async (...asked) =>
      isBroken && asked[1] === JOB ? no("failed", "Error 1") : server.doors.sendFields(...asked),
  };
  expect(await phone.send(doors)).toMatchObject({ why: "failed" });
  expect(server.inputs()).toEqual({ supplyVoltage: 240 });
  expect(server.photos.has(photo.id)).toBe(true);
  const upload = (await phone.draft()).upload;
  expect(upload).not.toBeNull();
  isBroken = false;
  expect(await phone.send(doors)).toBeNull();
  expect(server.written).toContain(upload?.clientId);
});

test("a hand-over that is refused for one value still gives the office all others", async () => {
  const server = makePhoneServer();
  const phone = makeTestPhone();
  await phone.change(enterAt("outdoorDbF", 91));
  await phone.change(enterAt("notes", TOO_LONG));
  await phone.change(enterAt("supplyVoltage", 240));
  const offered: string[] = [];
  const doors = refusing({
    ...server.doors,
    handOver: async (who, what) => {
      offered.push(...what.jobs.flatMap((job) => Object.keys(job.fields)));
      return server.doors.handOver(who, what);
    },
  });
  const handing = { store: phone.store(), doors, who: WHO, newId: () => "letter", now: () => NOON };
  expect(await handOverJob(handing, JOB)).toBeNull();
  expect(offered.toSorted()).toEqual(["outdoorDbF", "supplyVoltage"]);
});
