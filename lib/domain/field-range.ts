import { readUnit } from "./fields";
import { type QuantityText, readQuantityText } from "./quantity-text";
import { spokenToTyped } from "./spoken-quantity";

type Limits = {
  readonly label: string;
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  readonly isDifference?: boolean;
};

/** The refusal of a number outside what the field can hold, with the range. */
export function outsideRange(field: Limits, value: number): string {
  const unit = field.unit === "" ? "" : ` ${field.unit}`;
  return `${field.label}: ${value}${unit} cannot be right. Enter a value from ${field.min} to ${field.max}${unit}.`;
}

/** Reads a reading as it was typed or spoken on the phone, inside what its field can hold. */
export function readReading(field: Limits, text: string): QuantityText {
  const read = readQuantityText(spokenToTyped(text), readUnit(field));
  if (!read.ok || read.value === null) return read;
  if (read.value >= field.min && read.value <= field.max) return read;
  return { ok: false, problem: outsideRange(field, read.value) };
}

/** The longest text a phone may hold and send, so that what is too long for its field can still be handed over. */
export const MOST_TEXT = 10_000;

/** The longest answer to a question of the office, and the longest name under a record. */
export const MOST_ANSWER = 2_000;
export const MOST_SIGNATURE = 200;

/** The refusal of a text that is longer than its field. */
export function longerThan(field: { readonly label: string; readonly maxLength: number }): string {
  return `${field.label} is longer than ${field.maxLength} characters. Shorten it.`;
}

/** Characters as the schemas count them: an emoji of two code units is one. */
export function charactersIn(text: string): number {
  return [...text].length;
}

/** A text without what no database keeps: NUL characters and halves of characters that were cut in two. */
export function keepableText(text: string): string {
  return text.replace(/\0|\p{Surrogate}/gu, "");
}
