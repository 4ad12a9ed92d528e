import { IDBFactory } from "fake-indexeddb";
import "fake-indexeddb/auto";
import type { Doors } from "@/lib/offline/doors";
import { type Draft, emptyDraft } from "@/lib/offline/draft";
import type { Photo } from "@/lib/offline/outbox";
import { sendAll } from "@/lib/offline/sender";
import { openFieldStore } from "@/lib/offline/store";

export const JOB = "01900000-0000-7000-8000-000000000001";
export const WHO = "company.person";
export const NOON = "2026-07-01T12:00:00.000Z";

/** A browser with an empty IndexedDB. */
export function freshBrowser(): void {
  globalThis.indexedDB = new IDBFactory();
}

let stores = 0;

/** A phone on a store of its own. `reopened` is the same phone after its page was killed. */
export function makeTestPhone(name = `phone-${++stores}`) {
  let store = openFieldStore(name);
  let made = 0;
  const newId = () => `${name}-${++made}`;
  const draft = async (): Promise<Draft> => (await store.readDrafts(WHO))[JOB] ?? emptyDraft({});
  return {
    draft,
    store: () => store,
    kill: () => {
      store = openFieldStore(name);
    },
    change: (change: (draft: Draft) => Draft) =>
      store.changeDraft(WHO, JOB, (old) => change(old ?? emptyDraft({}))),
    photo: async (bytes: number): Promise<Photo> => {
      const photo: Photo = {
        id: newId(),
        who: WHO,
        jobId: JOB,
        field: null,
        caption: "Nameplate",
        takenAt: NOON,
        latitude: null,
        longitude: null,
        type: "image/jpeg",
        bytes: new Blob([new Uint8Array(bytes)]),
        state: { at: "phone" },
      };
      await store.keepPhoto(photo);
      return photo;
    },
    send: (doors: Doors) => sendAll({ store, doors, who: WHO, newId, now: () => NOON }),
  };
}
