import { expect, test } from "vitest";
import type { Doors } from "@/lib/offline/doors";
import { emptyDraft, hold } from "@/lib/offline/draft";
import { jobsThatNeedYou, needsYou } from "@/lib/offline/needs-you";
import type { Letter } from "@/lib/offline/outbox";
import { afterSigningOut } from "@/lib/offline/signing-out";
import { makePhoneServer } from "../support/phone-server";
import { freshBrowser, JOB, makeTestPhone, NOON, WHO } from "../support/test-phone";

freshBrowser();

const ANSWER: Letter = {
  ...{ id: "letter", who: WHO, jobId: JOB, questionId: "question", text: "Yes.", madeAt: NOON },
  ...{ kind: "answer", state: { at: "phone" } },
};

test("an answer to a question that the office has closed meanwhile, and a refused picture, are named with their job", async () => {
  const phone = makeTestPhone();
  await phone.store().keepLetter(ANSWER);
  const photo = await phone.photo(10);
  const no = async () => ({ done: false, why: "refused", message: "Closed." }) as const;
  const doors: Doors = { ...makePhoneServer().doors, sendLetter: no, sendPhoto: no };
  await phone.send(doors);
  const held = {
    drafts: { [JOB]: hold(emptyDraft({}), "outdoorDbF", "9x", "Not a number.", NOON) },
    photos: await phone.store().photos(WHO),
    letters: await phone.store().letters(WHO),
  };
  expect(jobsThatNeedYou(held)).toEqual([{ jobId: JOB, count: 3 }]);
  const { fields, photos, letters } = needsYou(held, JOB);
  expect(fields.map(([key]) => key)).toEqual(["outdoorDbF"]);
  expect([photos[0]?.id, letters[0]?.state.message]).toEqual([photo.id, "Closed."]);
  expect(jobsThatNeedYou({ drafts: {}, photos: [], letters: [ANSWER] })).toEqual([]);
});

test("who signed out without a signal is signed out at the next contact, before anybody's jobs are asked for", async () => {
  const done: string[] = [];
  let waits = true;
  let hasSignal = false;
  const doors = afterSigningOut(
    {
      ...makePhoneServer().doors,
      readBundle: async () => {
        done.push("bundle");
        return { done: false, why: "sign in", message: "Sign in first." };
      },
    },
    {
      get: () => waits,
      set: (next) => {
        waits = next;
      },
    },
    async () => {
      done.push("sign out");
      return hasSignal;
    },
  );
  expect(await doors.readBundle(null, null)).toMatchObject({ why: "later" });
  hasSignal = true;
  expect(await doors.readBundle(null, null)).toMatchObject({ why: "sign in" });
  await doors.readBundle(null, null);
  expect(done).toEqual(["sign out", "sign out", "bundle", "bundle"]);
});
