import { numberText } from "@/lib/charts/number-text";
import type { FieldDef } from "@/lib/domain/fields";
import { isUuid } from "@/lib/domain/ids";
import type { PacketParts } from "./parts";

/** Id → name of what a record may point at. */
export type NameOf = (id: string) => string;

/** Names of what the records of a job point at. */
export function namesIn({ context, controls, log }: PacketParts): NameOf {
  const { model } = context;
  const names = new Map<string, string>([
    ...context.instruments.map((one) => [one.id, one.name] as const),
    ...log.imports.map((one) => [one.id, `${one.sourceName}, ${one.fileName}`] as const),
    ...(model ? [[model.id, `${model.maker} ${model.name}`] as const] : []),
    ...(controls ? [[controls.id, `${controls.maker} ${controls.name}`] as const] : []),
  ]);
  return (id) => names.get(id) ?? (isUuid(id) ? "no longer listed" : id);
}

/** A field's value in words and units, or `null` when nothing was entered. */
export function fieldText(
  field: FieldDef,
  value: string | number | boolean | null,
  nameOf: NameOf,
): string | null {
  if (value === null || value === "") return null;
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "number") {
    const unit = field.kind === "number" ? field.unit : "";
    return `${numberText(value, digits(value, field.kind === "number" ? field.decimals : 0))} ${unit}`.trim();
  }
  if (field.kind === "choice") return field.options.find((option) => option.value === value)?.label ?? value;
  return nameOf(value);
}

/** What was entered is never rounded away. */
function digits(value: number, wanted: number): number {
  const written = /\.(\d+)$/.exec(String(value))?.[1]?.length ?? 0;
  return Math.min(Math.max(written, wanted), 6);
}
