/* Longer than usual because it is one state that everything below changes; what is done with it is in files of its own. */
import type { PlainValue } from "@/lib/domain/merge-fields";
import { recordOf, viewOf, whoOf } from "./bundle";
import type { NotDone } from "./doors";
import * as drafts from "./draft";
import { createDraftWriter } from "./draft-writer";
import { followAssignments } from "./follow-assignments";
import { handOverAll } from "./hand-over";
import { withRoom } from "./make-room";
import { tidyOriginals, wishesToMeet } from "./originals";
import type { Letter, Photo, Who } from "./outbox";
import {
  emptiedWords,
  originalsGoneWords,
  type PhoneState,
  STARTING,
  storageProblemOf,
  unsentCount,
} from "./phone-state";
import { sendAll } from "./sender";
import type { Surroundings } from "./surroundings";

/** What did not change stays the object that it was: a picture is not drawn anew with every reading that is sent. */
function sameObjects<T extends { readonly id: string; readonly state: unknown }>(
  before: readonly T[],
  now: readonly T[],
): readonly T[] {
  const old = new Map(before.map((one) => [one.id, one]));
  return now.map((one) => {
    const was = old.get(one.id);
    return was && JSON.stringify(was) === JSON.stringify(one) ? was : one;
  });
}

export type Phone = ReturnType<typeof createPhone>;

const TAKEN_OFF =
  "A job is not yours any more. What had not been sent of it was offered to the office, and it was taken off this phone.";

/** The work of one person on one phone: what is known, what was entered, what has been sent. */
export function createPhone(surroundings: Surroundings) {
  const { store: given, doors, newId, now, owner, unsent, alone, tellOthers } = surroundings;
  let state: PhoneState = STARTING;
  /** Whose work the state holds. */
  let shown: Who | null = null;
  const listeners = new Set<() => void>();
  const show = (change: Partial<PhoneState>) => {
    state = { ...state, ...change };
    if (shown !== null && shown === owner.get() && unsent.get(shown) !== unsentCount(state))
      unsent.set(shown, unsentCount(state));
    for (const listener of listeners) listener();
  };
  const stamp = () => now().toISOString();
  const store = withRoom(given, (count) => show({ news: originalsGoneWords(count) }));
  const writer = createDraftWriter({
    store,
    owner: owner.get,
    blank: (jobId) => {
      const job = state.bundle?.jobs.find((one) => one.id === jobId);
      return drafts.emptyDraft(job ? recordOf(job) : {});
    },
    show: (all) => show({ drafts: all, keeping: writer.isBehind() }),
    failed: (error) => show({ storageProblem: storageProblemOf(error) }),
    kept: () => {
      if (state.storageProblem !== null) show({ storageProblem: null });
      tellOthers();
    },
  });

  /** Reads what the phone holds for its owner. */
  const reload = async (): Promise<void> => {
    const who = owner.get();
    const kept = who === null ? null : await store.readBundle(who);
    if (who === null || kept === null) {
      const lost = who === null ? 0 : unsent.get(who);
      if (who !== null && lost > 0) {
        unsent.set(who, 0);
        show({ news: emptiedWords(lost) });
      }
      shown = null;
      writer.forget();
      const nothing = { bundle: null, fetchedAt: null, drafts: {}, photos: [], letters: [], originals: [] };
      show({ phase: "nothing", ...nothing });
      return;
    }
    const [photos, letters] = [await store.photos(who), await store.letters(who)];
    const originals = await store.originals(who);
    const before = writer.keptCount();
    const stored = await store.readDrafts(who);
    if (writer.keptCount() !== before || owner.get() !== who) return reload();
    const { bundle, fetchedAt } = kept;
    const others = {
      photos: sameObjects(state.photos, photos),
      letters: sameObjects(state.letters, letters),
      originals: sameObjects(state.originals, originals),
    };
    shown = who;
    show({ phase: "ready", bundle: viewOf(bundle), fetchedAt, drafts: writer.read(stored), ...others });
  };
  const changed = async () => {
    await reload();
    tellOthers();
  };
  /** A contact on a phone that can keep nothing: said, and tried again with the next one. */
  const orSay = async (contact: Promise<void>): Promise<void> => {
    try {
      await contact;
      if (state.storageProblem !== null && !writer.isBehind()) show({ storageProblem: null });
    } catch (error) {
      if (!(error instanceof DOMException)) throw error;
      show({ storageProblem: storageProblemOf(error) });
    }
  };

  const leave = async (who: Who): Promise<NotDone | null> => {
    const name = state.bundle?.companyName ?? "the company";
    const stopped = await handOverAll({ store, doors, who, newId, now: stamp });
    if (stopped) return stopped;
    if (owner.get() === who) owner.set(null);
    unsent.set(who, 0);
    writer.forget();
    show({
      news: `You no longer work for ${name}. What had not been sent was offered to the office, and everything of ${name} was taken off this phone.`,
    });
    return null;
  };
  /** What an answer other than yes means for this phone. */
  const heed = async (who: Who | null, answer: NotDone | null): Promise<void> => {
    switch (answer?.why) {
      case undefined:
        return;
      case "later":
        return show({ link: "offline" });
      case "sign in":
        return show({ link: "sign in" });
      case "other person":
        // What is in the first person's drawer stays there until they sign in again.
        owner.set(null);
        writer.forget();
        return;
      case "removed":
      case "closed":
        return who === null ? undefined : heed(null, await leave(who));
      case "late":
        return show({ news: answer?.message ?? null });
      case "failed":
      case "gone":
      case "refused":
        return show({ refusal: answer?.message ?? null });
    }
  };

  /** Asks the office for the jobs as they stand now, and takes off the phone those that are no longer assigned. */
  const refresh = async (): Promise<void> => {
    await writer.settle();
    const asked = owner.get();
    const kept = asked === null ? null : await store.readBundle(asked);
    const answer = await doors.readBundle(asked, kept?.etag ?? null);
    if (!answer.done) {
      // A company that is unknown to this person: what is kept of it is put away.
      if (answer.why === "gone" && asked !== null) owner.set(null);
      else await heed(asked, answer);
      if (asked !== null && owner.get() === null) return refresh();
      return state.phase === "starting" || owner.get() === null ? reload() : undefined;
    }
    const fresh = answer.value === "unchanged" ? kept : answer.value;
    if (fresh === null) return;
    const who = whoOf(fresh.bundle);
    if (asked !== who) owner.set(who);
    await store.keepBundle(who, { bundle: fresh.bundle, etag: fresh.etag, fetchedAt: stamp() });
    const gone = await followAssignments(
      { store, doors, who, newId, now: stamp },
      fresh.bundle,
      fresh !== kept,
    );
    await tidyOriginals(store, who, fresh.bundle);
    if (gone > 0) show({ news: TAKEN_OFF });
    show({ link: "online" });
    await changed();
  };

  /** Sends what is ready, and only once on this phone. */
  const send = (noNews?: () => void) =>
    alone(async () => {
      await writer.settle();
      const who = owner.get();
      if (who === null) return;
      show({ sending: true });
      try {
        const stopped = await sendAll({
          ...{ store, doors, who, newId, now: stamp },
          ...(noNews ? { noNews } : {}),
        });
        show({ refusal: null, ...(stopped ? {} : { link: "online" as const }) });
        await heed(who, stopped);
      } finally {
        show({ sending: false });
        await changed();
      }
    });

  /** Sends what is ready and hears what is new: with the answer to the readings when that says it all. */
  const meet = async (): Promise<void> => {
    let mayBeNews = true;
    // A picture or a letter changes what the office would tell.
    const others = [...state.photos, ...state.letters].some((one) => one.state.at === "phone") || isAsked();
    await send(() => {
      mayBeNews = others;
    });
    if (!mayBeNews) return;
    await refresh();
    if (isAsked()) await send();
  };
  /** True when the office waits for an original that this phone can do something about. */
  const isAsked = () =>
    wishesToMeet(state.bundle?.wishes ?? [], state.originals, state.photos).length > 0 &&
    state.link === "online";

  /** Keeps something beside the drafts. What could not be kept is thrown back, so that the screen keeps it. */
  const keep = async (write: () => Promise<void>) => {
    try {
      await write();
      show({ storageProblem: null });
    } catch (error) {
      show({ storageProblem: storageProblemOf(error) });
      throw error;
    }
    await changed();
  };
  const change = writer.change;

  return {
    subscribe: (listener: () => void) => {
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
      };
    },
    state: () => state,
    reload,
    refresh,
    send: () => orSay(send()),
    meet: () => orSay(meet()),
    settle: writer.settle,
    newsSeen: () => show({ news: null }),
    /** Puts the owner's work away: it stays in its drawer, and nothing of it is shown. */
    forgetOwner: async () => {
      await writer.settle();
      owner.set(null);
      await changed();
    },
    enter: (jobId: string, key: string, value: PlainValue) =>
      change(jobId, (draft) => drafts.enter(draft, key, value, stamp())),
    enterAll: (jobId: string, values: Readonly<Record<string, PlainValue>>) =>
      change(jobId, (draft) =>
        Object.entries(values).reduce((all, [key, value]) => drafts.enter(all, key, value, stamp()), draft),
      ),
    hold: (jobId: string, key: string, text: string, message: string) =>
      change(jobId, (draft) => drafts.hold(draft, key, text, message, stamp())),
    keepMine: (jobId: string, key: string) => change(jobId, (draft) => drafts.keepMine(draft, key)),
    takeTheirs: (jobId: string, key: string) => change(jobId, (draft) => drafts.takeTheirs(draft, key)),
    setClock: (jobId: string, key: string, startedAt: number | null) =>
      change(jobId, (draft) => drafts.withClock(draft, key, startedAt)),
    /** Keeps a small picture and what the camera made of it. Answers the picture's id. */
    keepPhoto: async (photo: Omit<Photo, "id" | "who" | "state">, camera: Blob | null): Promise<string> => {
      const kept = { ...photo, id: newId(), who: owner.get() ?? "", state: { at: "phone" } } as const;
      await keep(() => store.keepPhoto(kept, camera));
      return kept.id;
    },
    /** Adds where a picture was taken, unless it has gone already. */
    placePhoto: async (id: string, place: { readonly latitude: number; readonly longitude: number }) => {
      const photo = state.photos.find((one) => one.id === id);
      if (photo?.state.at === "phone") await keep(() => store.keepPhoto({ ...photo, ...place }));
    },
    /** Throws away a picture that nobody has got yet, with its original. */
    dropPhoto: (id: string) => keep(() => store.dropOriginal(id).then(() => store.dropPhoto(id))),
    write: ({ jobId, kind, questionId, text }: Pick<Letter, "jobId" | "kind" | "questionId" | "text">) =>
      keep(() =>
        store.keepLetter({
          ...{ jobId, kind, questionId, text, id: newId(), madeAt: stamp() },
          who: owner.get() ?? "",
          state: { at: "phone" },
        }),
      ),
    dropLetter: (id: string) => keep(() => store.dropLetter(id)),
    /** Sends once more what the office has refused: what was in its way may be gone. */
    sendAgain: async (what: { readonly photo: string } | { readonly letter: string }) => {
      const again = { state: { at: "phone" } } as const;
      const photo = state.photos.find((one) => "photo" in what && one.id === what.photo);
      const letter = state.letters.find((one) => "letter" in what && one.id === what.letter);
      if (photo) await keep(() => store.keepPhoto({ ...photo, ...again }));
      if (letter) await keep(() => store.keepLetter({ ...letter, ...again }));
    },
  };
}
