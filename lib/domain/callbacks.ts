import type { CallbackId, JobId } from "./ids";

/** What a homeowner complains of. Three of them are about humidity. */
export const CALLBACK_KINDS = {
  too_humid: { label: "Too humid", humidity: true },
  musty: { label: "Musty smell", humidity: true },
  condensation: { label: "Water on vents, walls or windows", humidity: true },
  too_warm: { label: "Too warm", humidity: false },
  too_cold: { label: "Too cold", humidity: false },
  noise: { label: "Noise", humidity: false },
  leak: { label: "Water from the drain or pan", humidity: false },
  short_cycling: { label: "Starts and stops often", humidity: false },
  bills: { label: "High bills", humidity: false },
  other: { label: "Something else", humidity: false },
} as const;
export type CallbackKind = keyof typeof CALLBACK_KINDS;
export const CALLBACK_KIND_KEYS = Object.keys(CALLBACK_KINDS) as readonly CallbackKind[];

export const OUTCOMES = {
  worked: "It worked",
  partly: "Partly",
  did_not_work: "It did not work",
} as const;
export type Outcome = keyof typeof OUTCOMES;
export const OUTCOME_KEYS = Object.keys(OUTCOMES) as readonly Outcome[];

export type CallbackState = "open" | "fixed" | "closed";

export const CALLBACK_STATES: Readonly<Record<CallbackState, string>> = {
  open: "Open",
  fixed: "Fixed, outcome to be checked",
  closed: "Closed",
};

/** What the job's record said when the complaint came in. */
export type CallbackEvidence = {
  readonly fallsShort: readonly string[];
  readonly log: string | null;
  readonly settings: readonly string[];
};

export type CallbackWork = {
  readonly cause: string;
  readonly fix: string;
  readonly fixedOn: string | null;
  readonly outcome: Outcome | null;
  readonly outcomeNote: string;
  readonly outcomeCheckedOn: string | null;
};

export type Callback = CallbackWork & {
  readonly id: CallbackId;
  readonly version: number;
  readonly job: { readonly id: JobId; readonly number: number; readonly customerName: string };
  readonly kind: CallbackKind;
  readonly state: CallbackState;
  readonly reportedOn: string;
  readonly reportedByName: string;
  readonly complaint: string;
  readonly evidence: CallbackEvidence;
};

/** Where a callback stands follows from what was done: a fix that did not work leaves it open. */
export function callbackState(work: Pick<CallbackWork, "fix" | "fixedOn" | "outcome">): CallbackState {
  if (work.outcome === "worked") return "closed";
  if (work.outcome === "did_not_work") return "open";
  return work.fix !== "" && work.fixedOn !== null ? "fixed" : "open";
}
