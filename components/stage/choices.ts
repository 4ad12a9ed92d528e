import type { Choice } from "@/components/ui/choice-fields";
import type { EquipmentModel } from "@/lib/domain/catalog";
import type { ReferenceFieldDef } from "@/lib/domain/fields";

type SettingKind = "capacity setting" | "airflow setting";

/** What each kind of reference may name, as far as it does not depend on the chosen model. */
export type CatalogChoices = Readonly<
  Record<Exclude<ReferenceFieldDef["to"], SettingKind>, readonly Choice[]>
>;
export type ReferenceChoices = Readonly<Record<ReferenceFieldDef["to"], readonly Choice[]>>;

/** Capacity and airflow settings are those of the model chosen just now. */
export function choicesWith(catalog: CatalogChoices, model: EquipmentModel | null): ReferenceChoices {
  const named = (names: readonly string[]) =>
    [...new Set(names)].map((name) => ({ value: name, label: name }));
  return {
    ...catalog,
    "capacity setting": named(model?.data.capacitySettings.map((one) => one.name) ?? []),
    "airflow setting": named(model?.fan.map((row) => row.airflowSetting) ?? []),
  };
}
