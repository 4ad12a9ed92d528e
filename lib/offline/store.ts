import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB, type StoreNames } from "idb";
import type { FieldBundle } from "@/lib/domain/field-bundle";
import type { Draft } from "./draft";
import { readKeptDraft } from "./kept-draft";
import type { Letter, Original, Photo, Who } from "./outbox";

export type KeptBundle = {
  readonly bundle: FieldBundle;
  /** The server's mark of this state: an unchanged bundle is not sent again. */
  readonly etag: string | null;
  readonly fetchedAt: string;
};

type Schema = DBSchema & {
  people: { key: Who; value: KeptBundle };
  drafts: { key: string; value: Draft };
  photos: { key: string; value: Photo; indexes: { who: Who } };
  letters: { key: string; value: Letter; indexes: { who: Who } };
  originals: { key: string; value: Original; indexes: { who: Who } };
};

/** What the phone keeps. Each change is one read and write that nothing can come between; it resolves when kept. */
export type FieldStore = ReturnType<typeof openFieldStore>;

const STORES = ["people", "drafts", "photos", "letters", "originals"] as const;
const NAME = "dewledger-field";
const draftKey = (who: Who, jobId: string) => `${who}/${jobId}`;
const draftsOf = (who: Who) => IDBKeyRange.bound(`${who}/`, `${who}/\uffff`);

export function openFieldStore(name = NAME) {
  let opened: Promise<IDBPDatabase<Schema>> | null = null;
  const database = (): Promise<IDBPDatabase<Schema>> => {
    opened ??= openDB<Schema>(name, 2, {
      upgrade: (db, before, _after, tx) => {
        if (before < 1) {
          db.createObjectStore("people");
          db.createObjectStore("drafts");
          for (const store of ["photos", "letters"] as const)
            db.createObjectStore(store, { keyPath: "id" }).createIndex("who", "who");
        }
        db.createObjectStore("originals", { keyPath: "id" }).createIndex("who", "who");
        return before < 1 ? undefined : moveOriginals(tx);
      },
      // A newer page may raise the version; this one must not stand in its way.
      blocking: (_current, _blocked, event) => (event.target as IDBDatabase).close(),
      terminated: () => {
        opened = null;
      },
    });
    opened.catch(() => {
      opened = null;
    });
    return opened;
  };

  return {
    readBundle: async (who: Who): Promise<KeptBundle | null> =>
      (await (await database()).get("people", who)) ?? null,
    keepBundle: async (who: Who, kept: KeptBundle): Promise<void> => {
      await (await database()).put("people", kept, who);
    },
    /** Changes what is kept, if anything is; `null` leaves it as it is. */
    changeBundle: async (who: Who, change: (kept: KeptBundle) => KeptBundle | null): Promise<void> => {
      const tx = (await database()).transaction("people", "readwrite");
      const kept = await tx.store.get(who);
      const next = kept ? change(kept) : null;
      if (next) await tx.store.put(next, who);
      await tx.done;
    },
    /** Everyone whose work this phone holds. */
    people: async (): Promise<readonly Who[]> => (await database()).getAllKeys("people"),

    /** Every draft of a person by job. */
    readDrafts: async (who: Who): Promise<Readonly<Record<string, Draft>>> => {
      const db = await database();
      const keys = await db.getAllKeys("drafts", draftsOf(who));
      const kept = await db.getAll("drafts", draftsOf(who));
      return Object.fromEntries(keys.map((key, at) => [key.slice(who.length + 1), readKeptDraft(kept[at])]));
    },
    changeDraft: async (who: Who, jobId: string, change: (draft: Draft | null) => Draft): Promise<Draft> => {
      const tx = (await database()).transaction("drafts", "readwrite", { durability: "strict" });
      const kept = await tx.store.get(draftKey(who, jobId));
      const next = change(kept === undefined ? null : readKeptDraft(kept));
      await tx.store.put(next, draftKey(who, jobId));
      await tx.done;
      return next;
    },

    photos: async (who: Who): Promise<readonly Photo[]> =>
      (await (await database()).getAllFromIndex("photos", "who", who)).map(asFile),
    keepPhoto: async (photo: Photo, camera: Blob | null = null): Promise<void> => {
      const db = await database();
      const tx = db.transaction(["photos", "originals"], "readwrite", { durability: "strict" });
      const writes: Promise<unknown>[] = [tx.objectStore("photos").put(photo)];
      if (camera !== null) writes.push(tx.objectStore("originals").put(originalOf(photo, camera)));
      // Only the transaction says why: what one write ended, the other hears of as a mere abort.
      for (const one of writes) one.catch(() => undefined);
      await tx.done;
    },

    originals: async (who: Who): Promise<readonly Original[]> =>
      (await database()).getAllFromIndex("originals", "who", who),
    keepOriginal: async (original: Original): Promise<void> => {
      const tx = (await database()).transaction("originals", "readwrite", { durability: "strict" });
      await tx.store.put(original);
      await tx.done;
    },
    dropOriginal: async (id: string): Promise<void> => (await database()).delete("originals", id),
    /** Takes the oldest original off the phone, whoever took it, and answers it; `null` when there is none. */
    freeOriginal: async (): Promise<Original | null> => {
      const tx = (await database()).transaction("originals", "readwrite");
      const oldest = (await tx.store.getAll())
        .filter((one) => one.file !== null)
        .reduce<Original | null>((first, one) => (first && first.takenAt <= one.takenAt ? first : one), null);
      if (oldest) await tx.store.delete(oldest.id);
      await tx.done;
      return oldest;
    },
    dropDraft: async (who: Who, jobId: string): Promise<void> =>
      (await database()).delete("drafts", draftKey(who, jobId)),

    /** Takes a picture off the phone. Its original stays: the office may still ask for it. */
    dropPhoto: async (id: string): Promise<void> => (await database()).delete("photos", id),

    letters: async (who: Who): Promise<readonly Letter[]> =>
      (await database()).getAllFromIndex("letters", "who", who),
    keepLetter: async (letter: Letter): Promise<void> => {
      const tx = (await database()).transaction("letters", "readwrite", { durability: "strict" });
      await tx.store.put(letter);
      await tx.done;
    },
    dropLetter: async (id: string): Promise<void> => (await database()).delete("letters", id),

    /** Takes everything of a person off this phone, in one step. */
    erase: async (who: Who): Promise<void> => {
      const tx = (await database()).transaction(STORES, "readwrite");
      const drafts = tx.objectStore("drafts");
      await tx.objectStore("people").delete(who);
      await drafts.delete(draftsOf(who));
      for (const name of ["photos", "letters", "originals"] as const) {
        const store = tx.objectStore(name);
        for (const key of await store.index("who").getAllKeys(who)) await store.delete(key);
      }
      await tx.done;
    },
  };
}

/** Earlier versions of the page kept a picture's bytes themselves. */
function asFile(kept: Photo): Photo {
  const bytes: Blob | ArrayBuffer = kept.bytes;
  return bytes instanceof Blob ? kept : { ...kept, bytes: new Blob([bytes], { type: kept.type }) };
}

function originalOf({ id, who, jobId, caption, takenAt }: Photo, file: Blob): Original {
  return { id, who, jobId, caption, takenAt, file, state: { at: "phone" } };
}

/** The first version kept an original inside its picture, when the person had asked for that. */
async function moveOriginals(
  tx: IDBPTransaction<Schema, StoreNames<Schema>[], "versionchange">,
): Promise<void> {
  for (const kept of await tx.objectStore("photos").getAll()) {
    const { original, ...photo } = kept as Photo & { readonly original?: Blob | null };
    if (!original) continue;
    await tx.objectStore("originals").put(originalOf(photo, original));
    await tx.objectStore("photos").put(photo);
  }
}
