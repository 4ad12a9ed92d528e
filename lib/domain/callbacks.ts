import { dayAfter } from "./days";
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

export const CALLBACK_STATES = {
  open: "Open",
  fixed: "Fixed, outcome to be checked",
  closed: "Closed",
} as const satisfies Readonly<Record<CallbackState, string>>;
export const CALLBACK_STATE_KEYS = Object.keys(CALLBACK_STATES) as readonly CallbackState[];

/** What a callback can turn out to come from; the first of them are what a log can show. */
export const CALLBACK_CAUSES = {
  "short-cycles": "Short cycles: too large, or set too large",
  "airflow-too-high": "Airflow too high",
  "fan-between-calls": "Fan runs between calls or after cooling",
  "second-stage-eager": "Second stage starts too eagerly",
  "mild-wet-weather": "Mild, wet weather with no call for cooling",
  "outdoor-moisture": "Moisture from outdoors: ventilation or leakage",
  "setpoint-habits": "Setpoint habits",
  "sensor-error": "Sensor reads wrong",
  "lost-capacity": "Lost charge, airflow or capacity",
  drain: "Drain, pan or trap",
  workmanship: "Installation or workmanship",
  house: "The house itself: damp, leaks, use",
  other: "Something else",
} as const;
export type CallbackCause = keyof typeof CALLBACK_CAUSES;
export const CALLBACK_CAUSE_KEYS = Object.keys(CALLBACK_CAUSES) as readonly CallbackCause[];

/** What the job's record said when the complaint came in. */
export type CallbackEvidence = {
  readonly fallsShort: readonly string[];
  readonly log: string | null;
  readonly settings: readonly string[];
  /** Outdoors and indoors in the days before the complaint, from the house's own log. */
  readonly days: string | null;
};

export type CallbackWork = {
  readonly causeKind: CallbackCause | null;
  readonly cause: string;
  readonly fix: string;
  readonly fixedOn: string | null;
  readonly outcome: Outcome | null;
  readonly outcomeNote: string;
  readonly outcomeCheckedOn: string | null;
  /** By when the next step is due: a visit while open, the look at the outcome once fixed. */
  readonly dueOn: string | null;
};

/** What was done about a callback, by itself. */
export function workOf(callback: CallbackWork): CallbackWork {
  const { causeKind, cause, fix, fixedOn, outcome, outcomeNote, outcomeCheckedOn, dueOn } = callback;
  return { causeKind, cause, fix, fixedOn, outcome, outcomeNote, outcomeCheckedOn, dueOn };
}

/** True when this outcome says something else than the one before, so that a person must put their name to it. */
export function outcomeToSign(before: CallbackWork & { readonly outcomeSigned: unknown }, now: CallbackWork) {
  if (now.outcome === null) return false;
  const same = (["outcome", "outcomeNote", "outcomeCheckedOn"] as const).every(
    (field) => before[field] === now[field],
  );
  return !(same && before.outcomeSigned !== null);
}

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
  /** Who checked the outcome and signed it, and on which instant; `null` while nobody has, or once a log disagreed. */
  readonly outcomeSigned: { readonly by: string; readonly at: string } | null;
  /** Why a log opened it again; empty while none did. */
  readonly reopenedByLog: string;
};

/** An open complaint waits at most this long for a visit, a fix this long for a look. Common practice, no source. */
const DAYS_TO_VISIT = 3;
const DAYS_TO_OUTCOME = 14;

/** When the next step is due if nobody says otherwise. `null` once closed. */
export function usualDueDate(
  callback: Pick<CallbackWork, "fix" | "fixedOn" | "outcome"> & { readonly reportedOn: string },
): string | null {
  switch (callbackState(callback)) {
    case "closed":
      return null;
    case "fixed":
      return dayAfter(callback.fixedOn ?? callback.reportedOn, DAYS_TO_OUTCOME);
    case "open":
      return dayAfter(callback.reportedOn, DAYS_TO_VISIT);
  }
}

/** Where a callback stands follows from what was done: a fix that did not work leaves it open. */
export function callbackState(work: Pick<CallbackWork, "fix" | "fixedOn" | "outcome">): CallbackState {
  if (work.outcome === "worked") return "closed";
  if (work.outcome === "did_not_work") return "open";
  return work.fix !== "" && work.fixedOn !== null ? "fixed" : "open";
}
