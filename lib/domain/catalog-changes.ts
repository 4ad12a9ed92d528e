import {
  COMPRESSOR_KIND_NAMES,
  type ControlModel,
  type EquipmentModel,
  type FanRow,
  type PerformanceRow,
} from "./catalog";
import { STAGE_FIELDS } from "./stages";

/** What differs between two versions of a model, in words, for a person who decides whether a job should move. */
export function modelChanges(from: EquipmentModel, to: EquipmentModel): readonly string[] {
  const pair = (label: string, before: unknown, after: unknown) =>
    same(before, after) ? [] : [`${label}: ${shown(before)} → ${shown(after)}`];
  return [
    ...pair("Maker", from.maker, to.maker),
    ...pair("Name", from.name, to.name),
    ...pair("Model number", from.modelNumber, to.modelNumber),
    ...pair(
      "Compressor",
      COMPRESSOR_KIND_NAMES[from.compressorKind],
      COMPRESSOR_KIND_NAMES[to.compressorKind],
    ),
    ...pair("Nominal, tons", from.nominalTons, to.nominalTons),
    ...pair("Refrigerant", from.refrigerant, to.refrigerant),
    ...pair("Rated airflow, cfm", from.data.ratedAirflowCfm, to.data.ratedAirflowCfm),
    ...pair(
      "Capacity settings",
      from.data.capacitySettings.map(({ name, tons }) => `${name} (${tons} tons)`).join(", "),
      to.data.capacitySettings.map(({ name, tons }) => `${name} (${tons} tons)`).join(", "),
    ),
    ...pair(
      "Maximum external static, in. w.c.",
      from.data.limits.maxExternalStaticInWc,
      to.data.limits.maxExternalStaticInWc,
    ),
    ...pair("Minimum airflow, cfm", from.data.limits.minimumAirflowCfm, to.data.limits.minimumAirflowCfm),
    ...pair(
      "Minimum airflow with electric heat, cfm",
      from.data.limits.electricHeatMinimumAirflowCfm,
      to.data.limits.electricHeatMinimumAirflowCfm,
    ),
    ...(same(from.data.lineSet, to.data.lineSet) ? [] : ["Charge and line-set data"]),
    ...(same(from.data.targets, to.data.targets) ? [] : ["Target superheat and subcooling"]),
    ...(same(from.data.heldCoil, to.data.heldCoil) ? [] : ["Held coil"]),
    ...(same(from.data.boardLabels ?? {}, to.data.boardLabels ?? {}) ? [] : ["Maker's labels of the board"]),
    ...rowChanges("Performance table", from.performance, to.performance, performanceKey),
    ...rowChanges("Fan table", from.fan, to.fan, fanKey),
  ];
}

/** What differs between two versions of a thermostat, in words; a label by our word for the setting. */
export function controlChanges(from: ControlModel, to: ControlModel): readonly string[] {
  const pair = (label: string, before: unknown, after: unknown) =>
    same(before, after) ? [] : [`${label}: ${shown(before)} → ${shown(after)}`];
  const [before, after] = [from.data.makerLabels, to.data.makerLabels];
  return [
    ...pair("Maker", from.maker, to.maker),
    ...pair("Name", from.name, to.name),
    ...pair("Cooling stages", from.data.stages, to.data.stages),
    ...Object.entries(STAGE_FIELDS.control_setup).flatMap(([key, { label }]) =>
      pair(`Maker's label of “${label}”`, before[key], after[key]),
    ),
  ];
}

function rowChanges<Row extends object>(
  label: string,
  from: readonly Row[],
  to: readonly Row[],
  keyOf: (row: Row) => string,
): readonly string[] {
  const before = new Map(from.map((row) => [keyOf(row), row]));
  const after = new Map(to.map((row) => [keyOf(row), row]));
  const added = to.filter((row) => !before.has(keyOf(row))).length;
  const gone = from.filter((row) => !after.has(keyOf(row))).length;
  const changed = from.filter((row) => {
    const now = after.get(keyOf(row));
    return now !== undefined && !sameRow(now, row);
  }).length;
  const parts = [
    ...(added > 0 ? [`${added} added`] : []),
    ...(gone > 0 ? [`${gone} gone`] : []),
    ...(changed > 0 ? [`${changed} changed`] : []),
  ];
  return parts.length === 0 ? [] : [`${label}, rows: ${parts.join(", ")}`];
}

/** What makes two rows of a performance table rows of one condition. */
export function performanceKey(row: PerformanceRow): string {
  return [
    row.mode,
    row.capacitySetting,
    row.outdoorDbF,
    row.enteringWbF,
    row.enteringDbF,
    row.airflowCfm,
  ].join("|");
}

function fanKey(row: FanRow): string {
  return `${row.airflowSetting}|${row.externalStaticInWc}`;
}

/** Members may stand in another order. */
function sameRow(one: object, other: object): boolean {
  return same(Object.entries(one).sort(), Object.entries(other).sort());
}

function same(one: unknown, other: unknown): boolean {
  return JSON.stringify(one ?? null) === JSON.stringify(other ?? null);
}

function shown(value: unknown): string {
  return value === null || value === undefined || value === "" ? "not given" : String(value);
}
