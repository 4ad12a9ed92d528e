import type { UnitFamily } from "./units";

export const TABLE_KINDS = ["performance", "fan"] as const;
export type TableKind = (typeof TABLE_KINDS)[number];
export const TABLE_KIND_NAMES: Readonly<Record<TableKind, string>> = {
  performance: "performance table",
  fan: "fan table",
};

/** One of our quantities: what a column of a maker's table may hold. */
export type TableQuantity = {
  readonly key: string;
  readonly label: string;
  /** `null` for words. */
  readonly family: UnitFamily | null;
  /** In our unit. Beyond it the cell is refused. */
  readonly range: readonly [least: number, most: number] | null;
  readonly need: "always" | "cooling" | "never";
  readonly decimals: number;
};

const words = (key: string, label: string): TableQuantity => ({
  key,
  label,
  family: null,
  range: null,
  need: "always",
  decimals: 0,
});

/** Ranges of temperature are what such tables print: common practice, no source. They catch °C read as °F. */
const PERFORMANCE: readonly TableQuantity[] = [
  words("capacitySetting", "Capacity setting or stage"),
  { ...words("mode", "Mode (cooling or heating)"), need: "always" },
  {
    key: "outdoorDbF",
    label: "Outdoor dry bulb",
    family: "temperature",
    range: [-40, 140],
    need: "always",
    decimals: 1,
  },
  {
    key: "enteringWbF",
    label: "Entering wet bulb",
    family: "temperature",
    range: [45, 90],
    need: "cooling",
    decimals: 1,
  },
  {
    key: "enteringDbF",
    label: "Entering dry bulb",
    family: "temperature",
    range: [45, 110],
    need: "always",
    decimals: 1,
  },
  {
    key: "airflowCfm",
    label: "Airflow",
    family: "airflow",
    range: [100, 10_000],
    need: "always",
    decimals: 0,
  },
  {
    key: "totalBtuh",
    label: "Total capacity",
    family: "capacity",
    range: [1_000, 500_000],
    need: "always",
    decimals: 0,
  },
  {
    key: "sensibleBtuh",
    label: "Sensible capacity",
    family: "capacity",
    range: [500, 500_000],
    need: "cooling",
    decimals: 0,
  },
  { key: "powerW", label: "Power", family: "power", range: [50, 50_000], need: "never", decimals: 0 },
];

const FAN: readonly TableQuantity[] = [
  words("airflowSetting", "Airflow setting"),
  {
    key: "externalStaticInWc",
    label: "External static",
    family: "pressure",
    range: [0, 2],
    need: "always",
    decimals: 2,
  },
  {
    key: "airflowCfm",
    label: "Airflow",
    family: "airflow",
    range: [50, 10_000],
    need: "always",
    decimals: 0,
  },
  { key: "powerW", label: "Fan power", family: "power", range: [1, 5_000], need: "never", decimals: 0 },
];

export function quantitiesOf(kind: TableKind): readonly TableQuantity[] {
  return kind === "performance" ? PERFORMANCE : FAN;
}
