import type { TypedValues } from "./typed-values";

/** In the page's memory alone: they outlast a look at another page, not the browser's tab or a sign-out. */
const held = new Map<string, TypedValues>();

/** What was typed into a form and could not be saved, so that it stands there again when the form is opened again. */
export const heldEntries = {
  of: (form: string): TypedValues | null => held.get(form) ?? null,
  /** Nothing to hold forgets what was held. */
  hold: (form: string, typed: TypedValues, fields: readonly string[]): void => {
    if (fields.length === 0) held.delete(form);
    else held.set(form, Object.fromEntries(fields.map((field) => [field, typed[field] ?? null])));
  },
};
