import type { EquipmentModel } from "@/lib/domain/catalog";

type Field = { readonly name: string; readonly label: string; readonly unit: string };
type Section = { readonly title: string; readonly fields: readonly Field[] };

/** Numbers a maker may leave out: an empty field is "not published", never zero. */
export const OPTIONAL_SECTIONS: readonly Section[] = [
  {
    title: "Limits",
    fields: [
      { name: "maxExternalStaticInWc", label: "Maximum external static", unit: "in. w.c." },
      { name: "minimumAirflowCfm", label: "Minimum airflow", unit: "cfm" },
      { name: "electricHeatMinimumAirflowCfm", label: "Minimum airflow with electric heat", unit: "cfm" },
    ],
  },
  {
    title: "Charge and line set",
    fields: [
      { name: "includedLengthFt", label: "Line-set length included", unit: "ft" },
      { name: "addOzPerFt", label: "Charge to add beyond it", unit: "oz/ft" },
      { name: "factoryChargeLb", label: "Factory charge", unit: "lb" },
      { name: "subcoolingF", label: "Target subcooling", unit: "Δ°F" },
      { name: "superheatF", label: "Target superheat", unit: "Δ°F" },
    ],
  },
];

export const HELD_COIL_FIELDS: readonly Field[] = [
  { name: "ratedTotalBtuh", label: "Rated total capacity", unit: "Btu/h" },
  { name: "ratedSensibleRatio", label: "Rated sensible ratio", unit: "" },
  { name: "heldTemperatureF", label: "Coil temperature held", unit: "°F" },
  { name: "colderCoilByF", label: "Colder-coil setting lowers it by", unit: "Δ°F" },
  { name: "approachAtRatedF", label: "Coil over evaporating temperature at rating", unit: "Δ°F" },
  { name: "frostLimitF", label: "Frost limit", unit: "°F" },
  { name: "minimumCapacityShare", label: "Least capacity as a share of the most", unit: "" },
  { name: "settlingMin", label: "Time to settle after a stage change", unit: "min" },
];

/** What a model's fields hold, by name. */
export function valuesOf(model: EquipmentModel | null): Readonly<Record<string, string | number | null>> {
  if (model === null) return {};
  const { limits, lineSet, targets, heldCoil, ratedAirflowCfm } = model.data;
  const { fullCapacity: _lines, ...coil } = heldCoil ?? { fullCapacity: [] };
  return { ...limits, ...lineSet, ...targets, ...coil, ratedAirflowCfm };
}
