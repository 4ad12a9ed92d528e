import { type KeyboardEvent, useRef, useState } from "react";
import type { TypedValues } from "./typed-values";

/** Edits of one field in one go are one step. */
const ONE_GO_MS = 1_000;
const MOST_STEPS = 200;

type Steps = { readonly past: readonly TypedValues[]; readonly future: readonly TypedValues[] };

/** Steps back and forward through what was entered, across all fields of a form. */
export function useHistory() {
  const [steps, setSteps] = useState<Steps>({ past: [], future: [] });
  const last = useRef({ field: "", atMs: 0 });
  return {
    canUndo: steps.past.length > 0,
    canRedo: steps.future.length > 0,
    /** Notes how the form stood before a field was changed. */
    note: (before: TypedValues, field: string) => {
      const now = Date.now();
      const isSameGo = last.current.field === field && now - last.current.atMs < ONE_GO_MS;
      last.current = { field, atMs: now };
      if (isSameGo) return;
      setSteps(({ past }) => ({ past: [...past.slice(-MOST_STEPS), before], future: [] }));
    },
    /** The values one step back or forward, or `null` when there are none. */
    step: (direction: "undo" | "redo", now: TypedValues): TypedValues | null => {
      const to = direction === "undo" ? steps.past.at(-1) : steps.future.at(-1);
      if (to === undefined) return null;
      last.current = { field: "", atMs: 0 };
      setSteps(({ past, future }) =>
        direction === "undo"
          ? { past: past.slice(0, -1), future: [...future, now] }
          : { past: [...past, now], future: future.slice(0, -1) },
      );
      return to;
    },
  };
}

/** Ctrl+Z and Ctrl+Shift+Z or Ctrl+Y, on a Mac with the command key. */
export function stepOfKey(event: KeyboardEvent): "undo" | "redo" | null {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return null;
  const key = event.key.toLowerCase();
  if (key === "z") return event.shiftKey ? "redo" : "undo";
  return key === "y" ? "redo" : null;
}
