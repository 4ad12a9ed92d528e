import { beforeEach, expect, test } from "vitest";
import { emptyDraft, enter } from "@/lib/offline/draft";
import { openFieldStore } from "@/lib/offline/store";
import { freshBrowser, makeTestPhone, NOON, WHO } from "../support/test-phone";

beforeEach(freshBrowser);

test("what one person keeps is not another's, though the phone is the same", async () => {
  const store = openFieldStore();
  const change = (value: number) => () => enter(emptyDraft({}), "outdoorDbF", value, NOON);
  await store.changeDraft("company.ann", "job", change(91));
  await store.changeDraft("company.annabel", "job", change(92));
  await store.changeDraft("other.ann", "job", change(93));
  expect(
    Object.values(await store.readDrafts("company.ann")).map((one) => one.pending.outdoorDbF?.value),
  ).toEqual([91]);
  await store.erase("company.ann");
  expect(await store.readDrafts("company.ann")).toEqual({});
  expect(Object.keys(await store.readDrafts("company.annabel"))).toEqual(["job"]);
  expect(Object.keys(await store.readDrafts("other.ann"))).toEqual(["job"]);
});

test("erasing takes drafts, pictures and letters of that person, in one step", async () => {
  const phone = makeTestPhone();
  await phone.change((draft) => enter(draft, "outdoorDbF", 91, NOON));
  await phone.photo(10);
  await phone.store().erase(WHO);
  expect(await phone.store().readDrafts(WHO)).toEqual({});
  expect(await phone.store().photos(WHO)).toEqual([]);
});

test("two pages that change one draft at once both get through", async () => {
  const [one, other] = [openFieldStore(), openFieldStore()];
  const entry = (key: string) => (draft: ReturnType<typeof emptyDraft> | null) =>
    enter(draft ?? emptyDraft({}), key, key, NOON);
  await Promise.all(
    Array.from({ length: 20 }, (_, at) =>
      (at % 2 ? one : other).changeDraft(WHO, "job", entry(`field${at}`)),
    ),
  );
  expect(Object.keys((await one.readDrafts(WHO)).job?.pending ?? {})).toHaveLength(20);
});

test("a picture that an older page kept as bytes is a file like the others", async () => {
  const phone = makeTestPhone();
  const { id, ...photo } = await phone.photo(3);
  const old = { ...photo, id: "old", bytes: new Uint8Array([1, 2, 3]).buffer };
  await phone.store().keepPhoto(old as unknown as Awaited<ReturnType<typeof phone.photo>>);
  const kept = await phone.store().photos(WHO);
  expect(kept.map((one) => [one.id, one.bytes.size])).toEqual(
    [
      ["old", 3],
      [id, 3],
    ].toSorted(),
  );
  const first = kept.find((one) => one.id === "old");
  expect(new Uint8Array((await first?.bytes.arrayBuffer()) ?? [])).toEqual(new Uint8Array([1, 2, 3]));
});
