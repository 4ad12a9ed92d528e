import type { FieldDef } from "../fields";

/** Readings that are worth a pair: how the system was found, and how it was left. */
const OF_A_STAGE = [
  "AirflowCfm",
  "ReturnDbF",
  "ReturnWbF",
  "ReturnRhPct",
  "SupplyDbF",
  "SupplyWbF",
  "SupplyRhPct",
  "ReturnStaticInWc",
  "SupplyStaticInWc",
  "SuctionPressurePsig",
  "SuctionLineF",
  "LiquidPressurePsig",
  "LiquidLineF",
  "FanPowerW",
] as const;
const SHARED = ["outdoorDbF", "supplyVoltage", "outdoorUnitAmps", "outdoorUnitPowerW"] as const;

type PairedKey = `${"second" | "first"}${(typeof OF_A_STAGE)[number]}` | (typeof SHARED)[number];

/** The readings that have a partner as found. */
export const PAIRED_KEYS: readonly PairedKey[] = [
  ...SHARED,
  ...OF_A_STAGE.map((name) => `second${name}` as const),
  ...OF_A_STAGE.map((name) => `first${name}` as const),
];

/** `secondAirflowCfm` → `foundSecondAirflowCfm`. */
export function foundKey<K extends string>(key: K): `found${Capitalize<K>}` {
  return `found${key.charAt(0).toUpperCase()}${key.slice(1)}` as `found${Capitalize<K>}`;
}

/** The partner of each paired reading: the same quantity with the same limits, before anything was corrected. */
export function foundFields<F extends Readonly<Record<PairedKey, FieldDef>>>(fields: F) {
  return Object.fromEntries(
    PAIRED_KEYS.map((key) => {
      const { neededToSign: _, help: __, ...field } = fields[key];
      return [
        foundKey(key),
        { ...field, label: `As found: ${field.label}`, group: `As found: ${field.group}` },
      ];
    }),
  ) as { readonly [K in PairedKey & string as `found${Capitalize<K>}`]: F[K] };
}
