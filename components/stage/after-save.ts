import type { SaveStateProps } from "@/components/ui/save-state";
import type { FieldProblem } from "@/lib/domain/problems";

/** A pause in typing this long saves. */
export const PAUSE_MS = 1_500;

/** How long until a save that did not reach the server is tried again. */
export const RETRY_MS = 10_000;

/** What is shown after a save: when it was, or the first thing that could not be kept with it. */
export function stateAfterSave([first]: readonly FieldProblem[]): SaveStateProps {
  if (first) return { state: "not saved", why: first.message };
  return { state: "saved", at: new Date().toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" }) };
}

/** A lost connection is an answer like any other: what was typed stays, and the person is told. */
export const LOST = {
  ok: false,
  code: "UNAVAILABLE",
  message: "No connection to the server. Your entries are still here and are saved when it is back.",
  fields: [],
  details: {},
} as const;
