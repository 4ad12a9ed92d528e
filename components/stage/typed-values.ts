import { type FieldDef, type FieldDefs, readUnit } from "@/lib/domain/fields";
import { readQuantityText } from "@/lib/domain/quantity-text";
import type { FieldValue } from "./stage-field";

export type TypedValues = Readonly<Record<string, FieldValue>>;

/** What stands in the form now, as text and answers; nothing is cleaned away before the server has seen it. */
export function typedValues(fields: FieldDefs, form: FormData): TypedValues {
  return Object.fromEntries(Object.entries(fields).map(([key, field]) => [key, typed(field, form.get(key))]));
}

function typed(field: FieldDef, given: FormDataEntryValue | null): FieldValue {
  const text = typeof given === "string" ? given : "";
  if (field.kind === "yes-no") return text === "" ? null : text === "yes";
  return text === "" ? null : text;
}

/** The same values as far as they can be read already, for the findings beside the form. */
export function readableValues(fields: FieldDefs, values: TypedValues): TypedValues {
  return Object.fromEntries(
    Object.entries(fields).map(([key, field]) => [key, readable(field, values[key] ?? null)]),
  );
}

function readable(field: FieldDef, value: FieldValue): FieldValue {
  if (field.kind !== "number" || typeof value !== "string") return value;
  const read = readQuantityText(value, readUnit(field));
  if (!read.ok || read.value === null) return null;
  // A number that is still being typed may be out of range; it counts as not entered.
  return read.value >= field.min && read.value <= field.max ? read.value : null;
}
