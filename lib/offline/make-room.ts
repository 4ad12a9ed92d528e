import type { Original } from "./outbox";
import { isFull } from "./phone-state";
import type { FieldStore } from "./store";

/**
 * The same store on a phone that fills up: what cannot be written for want of space is written again after each original
 * that makes room, the oldest first. Readings and the small pictures count more than an original.
 *
 * @param freed - Hears how many had to go.
 */
export function withRoom(store: FieldStore, freed: (count: number) => void): FieldStore {
  const fitting = async <T>(write: () => Promise<T>, smaller: () => Promise<T> = write): Promise<T> => {
    const gone: Original[] = [];
    try {
      for (;;) {
        try {
          return await write();
        } catch (error) {
          if (!isFull(error)) throw error;
          const oldest = await store.freeOriginal().catch(() => null);
          if (oldest === null) return await smaller();
          gone.push(oldest);
        }
      }
    } finally {
      // What went is remembered, so that the office is told when it asks; without room for that, its picture tells.
      for (const one of gone) await store.keepOriginal({ ...one, file: null }).catch(() => undefined);
      if (gone.length > 0) freed(gone.length);
    }
  };
  return {
    ...store,
    keepBundle: (...given) => fitting(() => store.keepBundle(...given)),
    changeBundle: (...given) => fitting(() => store.changeBundle(...given)),
    changeDraft: (...given) => fitting(() => store.changeDraft(...given)),
    keepLetter: (...given) => fitting(() => store.keepLetter(...given)),
    keepPhoto: (photo, camera = null) =>
      fitting(
        () => store.keepPhoto(photo, camera),
        // With all others gone its own original is the next to go.
        () => store.keepPhoto(photo),
      ),
  };
}
