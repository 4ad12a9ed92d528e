import {
  BTUH_PER_KW,
  BTUH_PER_TON,
  CFM_PER_L_PER_S,
  CFM_PER_M3_PER_H,
  PA_PER_IN_WC,
} from "@/lib/domain/unit-factors";

/** Units a maker's table may be printed in, each with what turns its numbers into ours. */
const FAMILIES = {
  temperature: {
    ours: "°F",
    units: { "°F": { scale: 1, shift: 0 }, "°C": { scale: 1.8, shift: 32 } },
  },
  capacity: {
    ours: "Btu/h",
    units: {
      "Btu/h": { scale: 1, shift: 0 },
      // In the trade M is a thousand.
      "MBtu/h": { scale: 1_000, shift: 0 },
      kW: { scale: BTUH_PER_KW, shift: 0 },
      tons: { scale: BTUH_PER_TON, shift: 0 },
    },
  },
  airflow: {
    ours: "cfm",
    units: {
      cfm: { scale: 1, shift: 0 },
      "L/s": { scale: CFM_PER_L_PER_S, shift: 0 },
      "m³/h": { scale: CFM_PER_M3_PER_H, shift: 0 },
      "m³/s": { scale: 1_000 * CFM_PER_L_PER_S, shift: 0 },
    },
  },
  pressure: {
    ours: "in. w.c.",
    units: {
      "in. w.c.": { scale: 1, shift: 0 },
      Pa: { scale: 1 / PA_PER_IN_WC, shift: 0 },
      kPa: { scale: 1_000 / PA_PER_IN_WC, shift: 0 },
      "mm w.c.": { scale: 1 / 25.4, shift: 0 },
    },
  },
  power: { ours: "W", units: { W: { scale: 1, shift: 0 }, kW: { scale: 1_000, shift: 0 } } },
} as const;

export type UnitFamily = keyof typeof FAMILIES;
export const TABLE_UNITS = [
  ...new Set(Object.values(FAMILIES).flatMap((family) => Object.keys(family.units))),
] as readonly string[];

type Step = { readonly scale: number; readonly shift: number };

export function unitsOf(family: UnitFamily): readonly string[] {
  return Object.keys(FAMILIES[family].units);
}

/** The unit the catalog keeps. */
export function ourUnit(family: UnitFamily): string {
  return FAMILIES[family].ours;
}

/** The number in our unit; ours pass untouched, others are rounded to seven figures so that no float's tail shows. */
export function toOurUnit(value: number, family: UnitFamily, unit: string): number {
  const units: Readonly<Record<string, Step>> = FAMILIES[family].units;
  const step = units[unit];
  if (step === undefined) throw new RangeError(`${unit} is no unit of ${family}`);
  if (step.scale === 1 && step.shift === 0) return value;
  return Number((value * step.scale + step.shift).toPrecision(7));
}

/** How people write each unit: lower case, without spaces, dots and brackets. */
const SPELLINGS: Readonly<Record<UnitFamily, Readonly<Record<string, string>>>> = {
  temperature: {
    f: "°F",
    "°f": "°F",
    degf: "°F",
    fahrenheit: "°F",
    c: "°C",
    "°c": "°C",
    degc: "°C",
    celsius: "°C",
  },
  capacity: {
    btuh: "Btu/h",
    "btu/h": "Btu/h",
    "btu/hr": "Btu/h",
    btu: "Btu/h",
    mbh: "MBtu/h",
    mbtuh: "MBtu/h",
    "mbtu/h": "MBtu/h",
    "mbtu/hr": "MBtu/h",
    kbtuh: "MBtu/h",
    "kbtu/h": "MBtu/h",
    "kbtu/hr": "MBtu/h",
    kw: "kW",
    ton: "tons",
    tons: "tons",
  },
  airflow: {
    cfm: "cfm",
    scfm: "cfm",
    "ft3/min": "cfm",
    "l/s": "L/s",
    lps: "L/s",
    "m3/h": "m³/h",
    "m3/hr": "m³/h",
    cmh: "m³/h",
    "m3/s": "m³/s",
  },
  pressure: {
    inwc: "in. w.c.",
    iwc: "in. w.c.",
    inwg: "in. w.c.",
    inh2o: "in. w.c.",
    in: "in. w.c.",
    '"': "in. w.c.",
    '"wc': "in. w.c.",
    pa: "Pa",
    kpa: "kPa",
    mmwc: "mm w.c.",
    mmh2o: "mm w.c.",
  },
  power: { w: "W", watt: "W", watts: "W", kw: "kW" },
};

/** The unit a text names, or null. */
export function readUnit(text: string, family: UnitFamily): string | null {
  const key = text
    .normalize("NFKC")
    .toLowerCase()
    .replaceAll(/[\s.()[\],]/g, "");
  return Object.hasOwn(SPELLINGS[family], key) ? (SPELLINGS[family][key] ?? null) : null;
}
