import type { FieldDef, FieldDefs } from "@/lib/domain/fields";

export type FieldGroup = {
  readonly title: string;
  readonly fields: readonly (readonly [string, FieldDef])[];
};

/** The fields under their headings, both in the order of the definition. */
export function fieldGroups(fields: FieldDefs): readonly FieldGroup[] {
  const groups = new Map<string, (readonly [string, FieldDef])[]>();
  for (const entry of Object.entries(fields)) {
    const title = entry[1].group;
    groups.set(title, [...(groups.get(title) ?? []), entry]);
  }
  return [...groups].map(([title, entries]) => ({ title, fields: entries }));
}
