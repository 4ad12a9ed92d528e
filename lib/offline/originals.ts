import type { FieldBundle, OriginalWish } from "@/lib/domain/field-bundle";
import { MOST_PHOTO_BYTES } from "@/lib/domain/file-limits";
import type { NotDone } from "./doors";
import type { Handing } from "./hand-over";
import type { Original, Photo } from "./outbox";
import type { FieldStore } from "./store";

/**
 * An original stays while its job is on the phone or its startup was signed less than 30 days ago, as the office says;
 * once sent it is with the office, and only the word of it stays as long.
 */
export function staysOnPhone({ jobId }: Original, { jobs, originals }: FieldBundle): boolean {
  if (originals === undefined) return true;
  return jobs.some((one) => one.id === jobId) || originals.keepOf.includes(jobId);
}

/**
 * Takes originals off the phone that need not stay. One that the office refused while it no longer asked for it is as it
 * was before: asked for again, it goes.
 */
export async function tidyOriginals(store: FieldStore, who: string, bundle: FieldBundle): Promise<void> {
  const asked = new Set(bundle.originals?.asked.map((one) => one.photoId));
  for (const one of await store.originals(who)) {
    if (!staysOnPhone(one, bundle)) await store.dropOriginal(one.id);
    else if (one.state.at === "refused" && !asked.has(one.id))
      await store.keepOriginal({ ...one, state: { at: "phone" } });
  }
}

export type ToMeet = { readonly wish: OriginalWish; readonly with: Blob | "gone" | "too large" };

/**
 * What is to be done about the office's wishes. A picture that this phone has never held is another phone's matter; what
 * was sent or told already waits for the office's next bundle.
 */
export function wishesToMeet(
  wishes: readonly OriginalWish[],
  originals: readonly Original[],
  photos: readonly Photo[],
): readonly ToMeet[] {
  return wishes.flatMap((wish): readonly ToMeet[] => {
    const original = originals.find((one) => one.id === wish.photoId);
    if (!original) return photos.some((one) => one.id === wish.photoId) ? [{ wish, with: "gone" }] : [];
    if (original.state.at !== "phone") return [];
    const { file } = original;
    if (file === null) return [{ wish, with: "gone" }];
    return [{ wish, with: file.size > MOST_PHOTO_BYTES ? "too large" : file }];
  });
}

/** Meets one wish: an original is large, and whatever else waits goes between two of them. */
export async function sendOriginal({
  store,
  doors,
  who,
  now,
}: Omit<Handing, "newId">): Promise<NotDone | null> {
  const wishes = (await store.readBundle(who))?.bundle.originals?.asked ?? [];
  if (wishes.length === 0) return null;
  const [originals, photos] = [await store.originals(who), await store.photos(who)];
  const next = wishesToMeet(wishes, originals, photos)[0];
  if (next === undefined) return null;
  const { photoId: id, jobId, caption } = next.wish;
  const kept = originals.find((one) => one.id === id) ?? {
    ...{ id, who, jobId, caption, takenAt: now(), file: null },
    state: { at: "phone" as const },
  };
  // What the browser has lost cannot come either: the office hears that instead.
  const bytes = next.with instanceof Blob ? await next.with.arrayBuffer().catch(() => null) : null;
  const why = next.with === "too large" ? "too large" : "gone";
  const answer = bytes ? await doors.sendOriginal(kept, bytes) : await doors.sayNoOriginal(kept, why);
  if (answer.done) {
    await store.keepOriginal(
      bytes
        ? { ...kept, file: null, state: { at: "office", since: now() } }
        : { ...kept, state: { at: "told" } },
    );
    return null;
  }
  if (answer.why === "refused" || answer.why === "gone")
    await store.keepOriginal({ ...kept, state: { at: "refused", message: answer.message } });
  return answer;
}
