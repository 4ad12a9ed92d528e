import type { FieldChanges } from "@/lib/domain/merge-fields";
import type { Doors, NotDone } from "./doors";
import type { Draft } from "./draft";
import type { Letter, Who } from "./outbox";
import type { FieldStore } from "./store";

export type Handing = {
  readonly store: FieldStore;
  readonly doors: Doors;
  readonly who: Who;
  readonly newId: () => string;
  readonly now: () => string;
};

/**
 * Offers the office what the phone still holds of one job that is not this person's any more, then takes the job
 * off the phone. Answers why it must be tried again, or `null` when it is done.
 */
export async function handOverJob(handing: Handing, jobId: string): Promise<NotDone | null> {
  const { store, doors, who } = handing;
  for (;;) {
    const letter = await letterFor(handing, jobId);
    if (letter === null) break;
    const fields = JSON.parse(letter.text) as FieldChanges;
    const sent = { clientId: letter.id, deviceTime: letter.madeAt, jobs: [{ jobId, fields }] };
    const answer = await doors.handOver(who, sent);
    if (!answer.done && mustTryAgain(answer)) return answer;
    // One value that cannot be kept shall not take the others with it: each is offered alone, under the same id.
    if (!answer.done && answer.why === "refused")
      for (const [key, field] of Object.entries(fields)) {
        const alone = await doors.handOver(who, { ...sent, jobs: [{ jobId, fields: { [key]: field } }] });
        if (!alone.done && mustTryAgain(alone)) return alone;
      }
    const draft = (await store.readDrafts(who))[jobId];
    await store.dropLetter(letter.id);
    // Something was entered while this was on its way: it goes as well.
    if (draft && JSON.stringify(changesOf(draft)) !== letter.text) continue;
    await store.dropDraft(who, jobId);
  }
  for (const photo of await store.photos(who)) {
    if (photo.jobId !== jobId) continue;
    if (photo.state.at !== "office") {
      const answer = await doors.handOverPhoto(photo);
      if (!answer.done && mustTryAgain(answer)) return answer;
    }
    await store.dropPhoto(photo.id);
  }
  for (const letter of await store.letters(who))
    if (letter.jobId === jobId) await store.dropLetter(letter.id);
  await store.dropDraft(who, jobId);
  return null;
}

/** Offers everything of a person who has left the company, then takes it all off the phone. */
export async function handOverAll(handing: Handing): Promise<NotDone | null> {
  const { store, who } = handing;
  const jobs = new Set([
    ...Object.keys(await store.readDrafts(who)),
    ...(await store.photos(who)).map((photo) => photo.jobId),
  ]);
  for (const jobId of jobs) {
    const stopped = await handOverJob(handing, jobId);
    if (stopped) return stopped;
  }
  await store.erase(who);
  return null;
}

/** What is handed over is kept before it leaves, so that a repeat is the same. `null`: nothing waits. */
async function letterFor({ store, who, newId, now }: Handing, jobId: string): Promise<Letter | null> {
  const kept = (await store.letters(who)).find((one) => one.kind === "hand-over" && one.jobId === jobId);
  if (kept) return kept;
  const draft = (await store.readDrafts(who))[jobId];
  if (!draft || Object.keys(draft.pending).length === 0) return null;
  const letter: Letter = {
    id: newId(),
    who,
    jobId,
    kind: "hand-over",
    questionId: null,
    text: JSON.stringify(changesOf(draft)),
    madeAt: now(),
    state: { at: "phone" },
  };
  await store.keepLetter(letter);
  return letter;
}

function changesOf(draft: Draft): FieldChanges {
  return Object.fromEntries(
    Object.entries(draft.pending).map(([key, { base, value }]) => [key, { base, value }]),
  );
}

/** Any definite answer ends it: what was offered was offered. */
function mustTryAgain({ why }: NotDone): boolean {
  return why === "later" || why === "failed" || why === "sign in" || why === "other person";
}
