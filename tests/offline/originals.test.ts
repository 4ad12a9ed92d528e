import { IDBFactory } from "fake-indexeddb";
import { openDB } from "idb";
import { beforeEach, expect, test } from "vitest";
import type { FieldBundle } from "@/lib/domain/field-bundle";
import { withRoom } from "@/lib/offline/make-room";
import { staysOnPhone, tidyOriginals, wishesToMeet } from "@/lib/offline/originals";
import type { Original, Photo } from "@/lib/offline/outbox";
import { sendAll } from "@/lib/offline/sender";
import { type FieldStore, openFieldStore } from "@/lib/offline/store";
import { makePhoneServer } from "../support/phone-server";
import { freshBrowser, JOB, NOON, WHO } from "../support/test-phone";

beforeEach(freshBrowser);

const CAMERA = new Blob(["what the camera made of it"], { type: "image/jpeg" });
const FULL = () => new DOMException("no room", "QuotaExceededError");

const photo = (id: string, minute = 0): Photo => ({
  ...{ id, who: WHO, jobId: JOB, field: null, caption: `Photo ${id}`, latitude: null, longitude: null },
  takenAt: `2026-07-01T12:${String(minute).padStart(2, "0")}:00.000Z`,
  ...{ type: "image/jpeg", bytes: new Blob(["nine byte"]), state: { at: "office", since: NOON } },
});
const original = (id: string, more: Partial<Original> = {}): Original => ({
  ...{ id, who: WHO, jobId: JOB, caption: `Photo ${id}`, takenAt: NOON, file: CAMERA },
  state: { at: "phone" },
  ...more,
});
const wish = (photoId: string) => ({ photoId, jobId: JOB, caption: `Photo ${photoId}` });
const bundle = (jobs: readonly string[], originals?: FieldBundle["originals"]) =>
  ({ jobs: jobs.map((id) => ({ id })), ...(originals ? { originals } : {}) }) as unknown as FieldBundle;
const keepWishes = (store: FieldStore, ...ids: readonly string[]) =>
  store.keepBundle(WHO, {
    bundle: bundle([JOB], { keepOf: [], asked: ids.map(wish) }),
    ...{ etag: null, fetchedAt: NOON },
  });
const send = (store: FieldStore, doors = makePhoneServer().doors) =>
  sendAll({ store, doors, who: WHO, newId: () => "new", now: () => NOON });

test("an original stays with its job, and after it left the list as long as the office says", () => {
  const none = { keepOf: [], asked: [] };
  expect(staysOnPhone(original("a"), bundle([JOB], none))).toBe(true);
  expect(staysOnPhone(original("a"), bundle([], { ...none, keepOf: [JOB] }))).toBe(true);
  expect(staysOnPhone(original("a"), bundle([], none))).toBe(false);
  // A bundle that an older version of the page kept says nothing of it.
  expect(staysOnPhone(original("a"), bundle([]))).toBe(true);
});

test("what need not stay is taken off, nothing else", async () => {
  const store = openFieldStore();
  await store.keepPhoto(photo("a"), CAMERA);
  await store.keepPhoto({ ...photo("b"), jobId: "another" }, CAMERA);
  await tidyOriginals(store, WHO, bundle([JOB], { keepOf: [], asked: [] }));
  expect((await store.originals(WHO)).map((one) => one.id)).toEqual(["a"]);
});

test("a wish is met once, by the phone that took the picture, or it says why not", () => {
  const big = { size: 20 * 1024 * 1024 + 1 } as Blob;
  const kept = [
    original("send"),
    original("dropped", { file: null }),
    original("big", { file: big }),
    original("sent", { file: null, state: { at: "office", since: NOON } }),
    original("told", { file: null, state: { at: "told" } }),
    original("refused", { state: { at: "refused", message: "no" } }),
  ];
  const asked = [...kept.map((one) => one.id), "never had", "small only"].map(wish);
  const found = wishesToMeet(asked, kept, [photo("small only")]);
  expect(found.map(({ wish: { photoId }, with: what }) => [photoId, what])).toEqual([
    ["send", CAMERA],
    ["dropped", "gone"],
    ["big", "too large"],
    ["small only", "gone"],
  ]);
});

test("nothing goes unasked; asked, each goes once, also after a kill between sending and the answer", async () => {
  const store = openFieldStore();
  const server = makePhoneServer();
  for (const id of ["a", "b"]) await store.keepPhoto(photo(id), CAMERA);
  await send(store, server.doors);
  expect(server.originals.size).toBe(0);
  await keepWishes(store, "a", "none here");
  const lost = {
    ...server.doors,
    sendOriginal: async () => ({ done: false, why: "later", message: "" }) as const,
  };
  expect(await send(store, lost)).toMatchObject({ why: "later" });
  const reopened = openFieldStore();
  expect(await send(reopened, server.doors)).toBeNull();
  expect(await send(reopened, server.doors)).toBeNull();
  expect([...server.originals]).toEqual([["a", CAMERA.size]]);
  expect(await reopened.originals(WHO)).toMatchObject([
    { id: "a", file: null, state: { at: "office" } },
    { id: "b", state: { at: "phone" } },
  ]);
});

test("on a full phone originals go first, the oldest first, and the office is told when it asks", async () => {
  const store = openFieldStore();
  await store.keepPhoto(photo("newer", 2), CAMERA);
  await store.keepPhoto(photo("older", 1), CAMERA);
  const freed: number[] = [];
  const narrow: FieldStore = {
    ...store,
    // Room for one original beside the new one.
    keepPhoto: async (...given) => {
      if (2 > (await store.originals(WHO)).filter((one) => one.file).length) return store.keepPhoto(...given);
      throw FULL();
    },
  };
  const roomy = withRoom(narrow, (count) => freed.push(count));
  await roomy.keepPhoto(photo("third", 3), CAMERA);
  expect(freed).toEqual([1]);
  const files = (await store.originals(WHO)).map((one) => [one.id, one.file !== null]);
  expect(files.toSorted()).toEqual([
    ["newer", true],
    ["older", false],
    ["third", true],
  ]);
  const server = makePhoneServer();
  await keepWishes(store, "older");
  await send(store, server.doors);
  expect([...server.originals]).toEqual([["older", "gone"]]);
});

test("with no other original left its own goes, and the small picture is kept; any other fault is thrown", async () => {
  const store = openFieldStore();
  const narrow: FieldStore = {
    ...store,
    keepPhoto: async (one, camera) => {
      if (camera) throw FULL();
      return store.keepPhoto(one);
    },
    keepLetter: async () => {
      throw new DOMException("broken", "UnknownError");
    },
  };
  const roomy = withRoom(narrow, () => undefined);
  await roomy.keepPhoto(photo("a"), CAMERA);
  expect(await store.photos(WHO)).toHaveLength(1);
  expect(await store.originals(WHO)).toEqual([]);
  await store.keepPhoto(photo("b"), CAMERA);
  await expect(roomy.keepLetter({} as never)).rejects.toThrow("broken");
  expect((await store.originals(WHO)).map((one) => one.file !== null)).toEqual([true]);
});

test("originals that an older version kept inside their pictures are found again", async () => {
  globalThis.indexedDB = new IDBFactory();
  const old = await openDB("dewledger-field", 1, {
    upgrade: (db) => {
      db.createObjectStore("people");
      db.createObjectStore("drafts");
      for (const name of ["photos", "letters"])
        db.createObjectStore(name, { keyPath: "id" }).createIndex("who", "who");
    },
  });
  await old.put("photos", { ...photo("a"), original: CAMERA });
  await old.put("photos", { ...photo("b"), original: null });
  old.close();
  const store = openFieldStore();
  expect((await store.originals(WHO)).map((one) => one.id)).toEqual(["a"]);
  expect((await store.photos(WHO)).map((one) => one.id)).toEqual(["a", "b"]);
});
