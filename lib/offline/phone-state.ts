import type { FieldView } from "./bundle";
import { type Draft, waiting } from "./draft";
import type { Letter, Original, Photo } from "./outbox";

/** What the screens show. */
export type PhoneState = {
  /** `nothing`: this phone holds nothing for anybody and must meet the server first. */
  readonly phase: "starting" | "nothing" | "ready";
  readonly bundle: FieldView | null;
  readonly fetchedAt: string | null;
  readonly drafts: Readonly<Record<string, Draft>>;
  readonly photos: readonly Photo[];
  readonly letters: readonly Letter[];
  readonly originals: readonly Original[];
  readonly link: "unknown" | "online" | "offline" | "sign in";
  readonly sending: boolean;
  /** True while something typed is on its way into the phone's store: it is not kept yet. */
  readonly keeping: boolean;
  /** Why something could not be kept on this phone. */
  readonly storageProblem: string | null;
  /** Why the office did not take something. */
  readonly refusal: string | null;
  /** What happened that the person must know: work handed over and taken off the phone, readings that came late. */
  readonly news: string | null;
};

export const STARTING: PhoneState = {
  phase: "starting",
  bundle: null,
  fetchedAt: null,
  drafts: {},
  photos: [],
  letters: [],
  originals: [],
  link: "unknown",
  sending: false,
  keeping: false,
  storageProblem: null,
  refusal: null,
  news: null,
};

/** How much of a person's work is not with the office yet. */
export function unsentCount({ drafts, photos, letters }: PhoneState): number {
  const fields = Object.values(drafts).reduce((sum, draft) => sum + waiting(draft), 0);
  return fields + [...photos, ...letters].filter((one) => one.state.at !== "office").length;
}

const FULL =
  "This phone’s storage is full. What you entered last is only in this page’s memory: free some space and leave the page open until this message is gone.";
const NOT_KEPT = "This phone could not keep what you entered last. Leave the page open; it tries again.";

/** What the person is told when originals had to make room. */
export function originalsGoneWords(count: number): string {
  const what = count === 1 ? "The full size of one photo was" : `The full size of ${count} photos was`;
  return `This phone is full. ${what} taken off it to make room; the photos themselves and every reading are kept.`;
}

/** What the person is told when the browser has thrown away what this page kept. */
export function emptiedWords(count: number): string {
  const what = count === 1 ? "One entry" : `${count} entries`;
  return `This browser has cleared what this page kept. ${what} of yours had not been sent and must be entered again. Add the page to the home screen, so that the browser keeps it.`;
}

/** Why the phone could not keep something, said plainly. */
export function storageProblemOf(error: unknown): string {
  return isFull(error) ? FULL : NOT_KEPT;
}

/** The same of a picture, which is not on the phone then. */
export function pictureProblemOf(error: unknown): string {
  if (isFull(error))
    return "This phone’s storage is full: the picture was not kept. Free some space, then take it again.";
  return error instanceof Error && !(error instanceof DOMException)
    ? error.message
    : "The picture could not be kept. Take it again.";
}

/** True when the browser refused to keep something for want of space. */
export function isFull(error: unknown): boolean {
  return error instanceof DOMException && error.name === "QuotaExceededError";
}
