import { STAGE_FIELDS } from "@/lib/domain/stages";

/** A value of the startup record in words and units. */
export function shownValue(key: string, value: string | number | boolean | null): string {
  if (value === null || value === "") return "nothing";
  if (typeof value === "boolean") return value ? "yes" : "no";
  const field = STAGE_FIELDS.startup_record[key];
  if (field?.kind === "number" && field.unit !== "") return `${value} ${field.unit}`;
  if (field?.kind === "choice")
    return field.options.find((option) => option.value === value)?.label ?? String(value);
  return String(value);
}
