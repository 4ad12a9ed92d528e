"use client";

import { useActionState } from "react";
import type { FieldProblem } from "@/lib/domain/problems";
import { heard } from "./still-there";

/** What an action answers, as far as a form needs to know. */
export type Answer =
  | { readonly ok: true }
  | { readonly ok: false; readonly message: string; readonly fields: readonly FieldProblem[] };

export type SentForm =
  | { readonly state: "untouched" }
  | { readonly state: "done" }
  | { readonly state: "refused"; readonly message: string; readonly problems: readonly FieldProblem[] };

const OFFLINE = "No connection to the server. What you entered is still here; try again when there is one.";

/**
 * Sends a form and keeps the answer. A lost connection is a refusal like any other.
 *
 * @param send - Reads the form and calls the action.
 * @param onDone - Called after the action has done its work, for instance to close a dialog.
 */
export function useSentForm(
  send: (form: FormData) => Promise<Answer>,
  onDone?: () => void,
): readonly [SentForm, (form: FormData) => void, boolean] {
  return useActionState(
    async (_: SentForm, form: FormData): Promise<SentForm> => {
      try {
        const answer = heard(await send(form));
        if (!answer.ok) return { state: "refused", message: answer.message, problems: answer.fields };
      } catch {
        return { state: "refused", message: OFFLINE, problems: [] };
      }
      onDone?.();
      return { state: "done" };
    },
    { state: "untouched" },
  );
}

/** The problems of single fields, none while nothing was refused. */
export function problemsOf(form: SentForm): readonly FieldProblem[] {
  return form.state === "refused" ? form.problems : [];
}
