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
