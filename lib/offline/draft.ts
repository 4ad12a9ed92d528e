import type { FieldChanges, PlainValue } from "@/lib/domain/merge-fields";

/** A value that the server has not confirmed yet. */
export type PendingField = {
  readonly base: PlainValue;
  readonly value: PlainValue;
  /** By the device's clock. */
  readonly enteredAt: string;
  /** Why it waits for the person: it cannot be right, or someone else entered another value. */
  readonly held:
    | null
    | { readonly why: "problem"; readonly message: string }
    | { readonly why: "conflict"; readonly theirs: PlainValue };
};

export type Upload = {
  readonly clientId: string;
  readonly deviceTime: string;
  readonly fields: FieldChanges;
};

/** The shape of a kept draft. */
export const DRAFT_VERSION = 2;

/** What a phone keeps of one job's startup record. Plain data. */
export type Draft = {
  readonly draftVersion: typeof DRAFT_VERSION;
  /** The record as the server last told it. */
  readonly known: Readonly<Record<string, PlainValue>>;
  readonly pending: Readonly<Record<string, PendingField>>;
  /** Sent and not answered. It goes out again, the same bytes under the same id, until it is. */
  readonly upload: Upload | null;
  /** Clocks that were started and not yet read, by the field that will hold the minutes; device time, ms. */
  readonly clocks: Readonly<Record<string, number>>;
};

/** What became of an upload. `inputs` is the record as it stands now. */
export type UploadAnswer = {
  readonly inputs: Readonly<Record<string, PlainValue>>;
  /** What the server wrote for each field it took, as it reads it. */
  readonly accepted: Readonly<Record<string, PlainValue>>;
  readonly conflicts: readonly { readonly field: string; readonly theirs: PlainValue }[];
  readonly problems: readonly { readonly field: string; readonly message: string }[];
  /** Fields that came after signing: the office has them and decides. */
  readonly waiting: readonly string[];
  /** The record's version now; `null` when it is not a draft, or the answer does not say. */
  readonly draftVersion: number | null;
  /** The tag of the bundle after this, when the phone asked for it. */
  readonly bundleTag: string | null;
};

export function emptyDraft(known: Draft["known"]): Draft {
  return { draftVersion: DRAFT_VERSION, known, pending: {}, upload: null, clocks: {} };
}

/** What the record holds for the person at this phone. */
export function valuesOf(draft: Draft): Readonly<Record<string, PlainValue>> {
  const own = Object.entries(draft.pending).map(([key, { value }]) => [key, value] as const);
  return { ...draft.known, ...Object.fromEntries(own) };
}

/** Takes one entry. Entering what the server has already takes the entry back, unless it may be on its way. */
export function enter(draft: Draft, key: string, value: PlainValue, enteredAt: string): Draft {
  const old = draft.pending[key];
  const known = draft.known[key] ?? null;
  if (value === (old ? old.value : known)) return draft;
  // Editing a disagreement decides it: the person has seen the other value.
  const base = old ? (old.held?.why === "conflict" ? old.held.theirs : old.base) : known;
  if (value === known && !isOnItsWay(draft, key)) return { ...draft, pending: without(draft.pending, key) };
  return { ...draft, pending: { ...draft.pending, [key]: { base, value, enteredAt, held: null } } };
}

/** Keeps a text that cannot be read yet, so that nothing typed is lost. It is not sent. */
export function hold(draft: Draft, key: string, text: string, message: string, enteredAt: string): Draft {
  const field = enter(draft, key, text, enteredAt).pending[key];
  if (!field) return draft;
  return { ...draft, pending: { ...draft.pending, [key]: { ...field, held: { why: "problem", message } } } };
}

/** The person keeps their own value over the other one. */
export function keepMine(draft: Draft, key: string): Draft {
  const field = draft.pending[key];
  if (field?.held?.why !== "conflict") return draft;
  return {
    ...draft,
    pending: { ...draft.pending, [key]: { ...field, base: field.held.theirs, held: null } },
  };
}

/** The person gives their own value up. */
export function takeTheirs(draft: Draft, key: string): Draft {
  return draft.pending[key]?.held?.why === "conflict"
    ? { ...draft, pending: without(draft.pending, key) }
    : draft;
}

/** How many entries the server has not confirmed. */
export function waiting(draft: Draft): number {
  return Object.keys(draft.pending).length;
}

/** The entries that wait for the person. */
export function heldFields(draft: Draft): readonly (readonly [string, PendingField])[] {
  return Object.entries(draft.pending).filter(([, field]) => field.held !== null);
}

/** Which entries the next upload leaves out, and whether it takes one alone. */
export type Picking = { readonly oneAlone: boolean; readonly without: ReadonlySet<string> };
const ALL: Picking = { oneAlone: false, without: new Set() };

/** Makes the next upload, unless one is unanswered or nothing is ready to go. */
export function withUpload(
  draft: Draft,
  clientId: string,
  deviceTime: string,
  { oneAlone, without: left }: Picking = ALL,
): Draft {
  if (draft.upload) return draft;
  const ready = Object.entries(draft.pending)
    .filter(([key, field]) => field.held === null && !left.has(key))
    .slice(0, oneAlone ? 1 : undefined);
  if (ready.length === 0) return draft;
  const fields = Object.fromEntries(ready.map(([key, { base, value }]) => [key, { base, value }]));
  return { ...draft, upload: { clientId, deviceTime, fields } };
}

/** Takes the server's answer to an upload. An answer to another upload changes nothing. */
export function answered(draft: Draft, clientId: string, answer: UploadAnswer): Draft {
  const { upload } = draft;
  if (upload?.clientId !== clientId) return draft;
  const pending = Object.entries(draft.pending).flatMap(([key, field]): [string, PendingField][] => {
    const sent = upload.fields[key];
    if (!sent) return [[key, field]];
    const problem = answer.problems.find((one) => one.field === key);
    const conflict = answer.conflicts.find((one) => one.field === key);
    if (field.value !== sent.value || field.held !== null) {
      // Changed again while it was on its way: what was accepted is its new start, what was not leaves the old.
      const taken = Object.hasOwn(answer.accepted, key) ? (answer.accepted[key] ?? null) : sent.value;
      return [[key, { ...field, base: problem || conflict ? field.base : taken }]];
    }
    if (problem) return [[key, { ...field, held: { why: "problem", message: problem.message } }]];
    // A repeat gets the conflict of its first time; what stands there may have changed since.
    const theirs = answer.inputs[key] ?? null;
    if (conflict && theirs !== field.value) return [[key, { ...field, held: { why: "conflict", theirs } }]];
    return [];
  });
  return { ...draft, known: answer.inputs, pending: Object.fromEntries(pending), upload: null };
}

/** Takes back an upload that was refused as a whole: nothing of it is with the office, and it goes out otherwise. */
export function refusedWhole(draft: Draft, clientId: string): Draft {
  return draft.upload?.clientId === clientId ? { ...draft, upload: null } : draft;
}

/** Keeps why the office takes no such value, for the person to mend; not when it was changed meanwhile. */
export function refusedValue(draft: Draft, key: string, value: PlainValue, message: string): Draft {
  const field = draft.pending[key];
  if (field === undefined || field.value !== value || field.held !== null) return draft;
  return { ...draft, pending: { ...draft.pending, [key]: { ...field, held: { why: "problem", message } } } };
}

/** Takes the record as the server has just told it, unless an upload may have changed it meanwhile. */
export function refreshed(draft: Draft, known: Draft["known"]): Draft {
  return draft.upload ? draft : { ...draft, known };
}

/** Starts a clock for a field of minutes, or with `null` stops it. */
export function withClock(draft: Draft, key: string, startedAt: number | null): Draft {
  return {
    ...draft,
    clocks: startedAt === null ? without(draft.clocks, key) : { ...draft.clocks, [key]: startedAt },
  };
}

function isOnItsWay(draft: Draft, key: string): boolean {
  return draft.upload !== null && Object.hasOwn(draft.upload.fields, key);
}

function without<T>(from: Readonly<Record<string, T>>, key: string): Readonly<Record<string, T>> {
  return Object.fromEntries(Object.entries(from).filter(([one]) => one !== key));
}
