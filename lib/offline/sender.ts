import type { PlainValue } from "@/lib/domain/merge-fields";
import type { Answer, Doors, NotDone } from "./doors";
import { answered, emptyDraft, refusedValue, refusedWhole, withUpload } from "./draft";
import { sendOriginal } from "./originals";
import type { SendState, Who } from "./outbox";
import { takeOwnVersion } from "./own-version";
import type { FieldStore } from "./store";

type Sending = {
  readonly store: FieldStore;
  readonly doors: Doors;
  readonly who: Who;
  readonly newId: () => string;
  readonly now: () => string;
  /** Asks with the readings whether there is news; called when the office says that there is none. */
  readonly noNews?: () => void;
};

/**
 * Sends everything of a person that is ready: readings first, then pictures, then answers and signatures, each in
 * the order it was made, and last one original that the office asked for. Answers why it stopped, or `null` when nothing is left that could go.
 */
export async function sendAll(sending: Sending): Promise<NotDone | null> {
  const { store, doors, who } = sending;
  let refused: NotDone | null = null;
  /** True when going on makes no sense now. */
  const stops = (result: NotDone | null): result is NotDone =>
    result !== null && !["refused", "gone", "late", "failed"].includes(result.why);
  const unfinished = new Set<string>();
  for (const jobId of Object.keys(await store.readDrafts(who))) {
    const result = await sendDraft(sending, jobId);
    if (stops(result)) return result;
    if (result) unfinished.add(jobId);
    refused ??= result;
  }
  for (const photo of inOrder(await store.photos(who), (one) => one.takenAt)) {
    const result = await doors.sendPhoto(photo);
    if (!result.done && stops(result)) return result;
    if (!result.done) refused ??= result;
    if (isToRepeat(result)) continue;
    await store.keepPhoto({ ...photo, state: stateAfter(result, sending.now()) });
  }
  for (const letter of inOrder(await store.letters(who), (one) => one.madeAt)) {
    if (letter.kind === "hand-over") continue;
    // A signature stands under what the office has: readings that wait come first.
    const draft = (await store.readDrafts(who))[letter.jobId];
    const waits = unfinished.has(letter.jobId) || (draft && Object.keys(draft.pending).length > 0);
    if (letter.kind === "signature" && waits) continue;
    const result = await doors.sendLetter(letter);
    if (!result.done && stops(result)) return result;
    if (!result.done) refused ??= result;
    if (isToRepeat(result)) continue;
    await store.keepLetter({ ...letter, state: stateAfter(result, sending.now()) });
  }
  const original = await sendOriginal(sending);
  return stops(original) ? original : (refused ?? original);
}

/**
 * Sends one record until nothing is ready to go or something stops it. The upload is kept before it leaves, so
 * that a page killed half-way sends the same one again and the server knows it. Of an upload that is refused as a whole
 * each entry goes alone, so that one that cannot be kept holds no other back.
 */
export async function sendDraft(sending: Sending, jobId: string): Promise<NotDone | null> {
  const { store, doors, who, newId, now } = sending;
  let late = 0;
  let oneAlone = false;
  const refused = new Map<string, { readonly value: PlainValue; readonly answer: NotDone }>();
  let taken = 0;
  for (;;) {
    const kept = (await store.readDrafts(who))[jobId];
    if (!kept) return null;
    const picking = { oneAlone, without: new Set(refused.keys()) };
    const { upload } = kept.upload
      ? kept
      : await store.changeDraft(who, jobId, (draft) => withUpload(draft ?? kept, newId(), now(), picking));
    if (upload === null) break;
    const waiting = {
      fields: Object.keys(kept.pending).filter((key) => !(key in upload.fields)).length,
      photos: (await store.photos(who)).filter((one) => one.jobId === jobId && one.state.at === "phone")
        .length,
    };
    const tag = sending.noNews ? ((await store.readBundle(who))?.etag ?? null) : null;
    const result = await doors.sendFields(who, jobId, upload, waiting, tag);
    if (!result.done) {
      if (result.why !== "refused") return result;
      await store.changeDraft(who, jobId, (draft) => refusedWhole(draft ?? kept, upload.clientId));
      const sent = Object.entries(upload.fields);
      if (sent.length === 1) for (const [key, { value }] of sent) refused.set(key, { value, answer: result });
      oneAlone = true;
      continue;
    }
    taken += 1;
    if (await takeOwnVersion(store, who, jobId, result.value, now())) sending.noNews?.();
    await store.changeDraft(who, jobId, (draft) => answered(draft ?? kept, upload.clientId, result.value));
    late += result.value.waiting.length;
  }
  const [first] = refused.values();
  // Where several went and none was taken the entries are not to blame: they wait, and the refusal is said.
  if (first !== undefined && taken === 0 && refused.size > 1) return first.answer;
  for (const [key, { value, answer }] of refused)
    await store.changeDraft(who, jobId, (draft) =>
      refusedValue(draft ?? emptyDraft({}), key, value, answer.message),
    );
  return late === 0 ? null : { done: false, why: "late", message: lateWords(late) };
}

/** The office could not, for reasons of its own: the same goes again with the next contact. */
function isToRepeat(result: Answer<unknown>): boolean {
  return !result.done && result.why === "failed";
}

function lateWords(count: number): string {
  return `${count} of your readings came after the record was signed. The office has them and decides whether they count.`;
}

function stateAfter(result: Answer<unknown>, now: string): SendState {
  return result.done ? { at: "office", since: now } : { at: "refused", message: result.message };
}

/** What still has to go, oldest first. */
function inOrder<T extends { readonly state: SendState }>(items: readonly T[], at: (item: T) => string): T[] {
  return items
    .filter((one) => one.state.at === "phone")
    .toSorted((one, other) => (at(one) < at(other) ? -1 : at(one) > at(other) ? 1 : 0));
}
