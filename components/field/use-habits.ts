import { useSyncExternalStore } from "react";

/** How a person holds and reads this phone. Kept on the phone, for it alone. */
export type Habits = { readonly hand: "left" | "right"; readonly torch: boolean };

const KEY = "dewledger-field-habits";
const USUAL: Habits = { hand: "right", torch: false };
const listeners = new Set<() => void>();
let kept: Habits | null = null;

function read(): Habits {
  kept ??= { ...USUAL, ...parse(localStorage.getItem(KEY)) };
  return kept;
}

function parse(text: string | null): Partial<Habits> {
  try {
    return JSON.parse(text ?? "{}") as Partial<Habits>;
  } catch {
    return {};
  }
}

export function useHabits(): readonly [Habits, (habits: Habits) => void] {
  const habits = useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    read,
    () => USUAL,
  );
  const set = (next: Habits) => {
    kept = next;
    localStorage.setItem(KEY, JSON.stringify(next));
    for (const listener of listeners) listener();
  };
  return [habits, set];
}
