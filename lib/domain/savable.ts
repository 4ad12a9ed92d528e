import { fieldSchema } from "./field-schema";
import type { FieldDefs } from "./fields";
import { type FieldChanges, type Merged, mergeFields, type PlainValue } from "./merge-fields";
import type { StageKey } from "./stages/keys";

type Values = Readonly<Record<string, unknown>>;

/**
 * What can be saved of a form now: the record as it was saved last, with every changed field that can be kept. A field
 * that cannot be (not a number, out of range, against physics) keeps its saved value and comes back as a problem.
 *
 * @param saved - The values the form started from or saved last.
 * @param typed - The form as it stands, texts as typed.
 * @param current - The record as it is now; another than `saved` when somebody saved in between.
 */
export function savable(
  stage: StageKey,
  fields: FieldDefs,
  saved: Values,
  typed: Values,
  current: Values = saved,
): Merged {
  const changes: FieldChanges = Object.fromEntries(
    touchedFields(fields, saved, typed).map((key) => [
      key,
      { base: (saved[key] ?? null) as PlainValue, value: (typed[key] ?? null) as PlainValue },
    ]),
  );
  return mergeFields(stage, fields, current, changes);
}

/** The fields whose meaning is another than when they were saved; `1,250 cfm` typed over 1250 is none. */
export function touchedFields(fields: FieldDefs, saved: Values, typed: Values): readonly string[] {
  return Object.entries(fields)
    .filter(([key, field]) => {
      const read = fieldSchema(field).safeParse(typed[key] ?? null);
      return !read.success || (read.data ?? null) !== (saved[key] ?? null);
    })
    .map(([key]) => key);
}
