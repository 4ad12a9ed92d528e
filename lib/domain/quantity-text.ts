import { BTUH_PER_KW, BTUH_PER_TON, CFM_PER_L_PER_S, CFM_PER_M3_PER_H, PA_PER_IN_WC } from "./unit-factors";

/** Spellings people type or paste for a unit, lower case, without spaces. The unit's own symbol always counts. */
const SPELLINGS: Readonly<Record<string, readonly string[]>> = {
  "°F": ["f", "°f", "degf", "deg", "degrees", "°"],
  "Δ°F": ["f", "°f", "degf", "deg", "degrees", "°"],
  "%": ["pct", "percent", "%rh", "rh"],
  cfm: ["cfm", "ft3/min", "ft³/min"],
  "cfm at 50 Pa": ["cfm", "cfm50"],
  "in. w.c.": [
    "in",
    '"',
    "in.",
    "inwc",
    "iwc",
    "in.w.c.",
    "in.wc",
    "inch",
    "inches",
    '"wc',
    '"w.c.',
    "inw.c.",
    "inh2o",
  ],
  "Btu/h": ["btu", "btuh", "btu/h", "btu/hr"],
  psig: ["psi", "psig"],
  "ft²": ["sqft", "sf", "ft2", "ft²", "sq.ft."],
  ft: ["ft", "feet", "'", "foot"],
  kW: ["kw"],
  W: ["w", "watt", "watts"],
  V: ["v", "volt", "volts"],
  A: ["a", "amp", "amps"],
  min: ["min", "mins", "minutes", "m"],
  s: ["s", "sec", "seconds"],
  lb: ["lb", "lbs", "pound", "pounds", "#"],
  oz: ["oz", "ounce", "ounces"],
  tons: ["ton", "tons", "t"],
  microns: ["micron", "microns", "µm"],
};

/** Other units that are read and turned into the field's, in sight of the person. */
const CELSIUS = ["c", "°c", "degc", "degreesc", "celsius", "°celsius", "degreescelsius", "centigrade"];
const CONVERTED: Readonly<
  Record<
    string,
    readonly {
      readonly spellings: readonly string[];
      readonly name: string;
      readonly scale: number;
      readonly shift: number;
    }[]
  >
> = {
  "°F": [{ spellings: CELSIUS, name: "°C", scale: 1.8, shift: 32 }],
  // Between two temperatures the 32 drops out.
  "Δ°F": [{ spellings: [...CELSIUS, "k", "kelvin"], name: "°C", scale: 1.8, shift: 0 }],
};

/**
 * Units that a designer's report or a maker's sheet prints instead of ours. They are refused with the number to
 * enter, so that nobody has to look a factor up: 1 ft = 0.3048 m by definition, 1 psi = 6.894757 kPa.
 */
const FOREIGN: Readonly<Record<string, readonly (readonly [spellings: readonly string[], scale: number])[]>> =
  {
    "Btu/h": [
      [["t", "ton", "tons"], BTUH_PER_TON],
      [["kw"], BTUH_PER_KW],
      [["w", "watt", "watts"], BTUH_PER_KW / 1_000],
      [["kbtu", "kbtuh", "kbtu/h", "kbtu/hr", "mbh", "mbtuh", "mbtu/h", "mbtu/hr"], 1_000],
    ],
    tons: [
      [["btu", "btuh", "btu/h", "btu/hr"], 1 / BTUH_PER_TON],
      [["kw"], BTUH_PER_KW / BTUH_PER_TON],
    ],
    cfm: [
      [["l/s", "lps"], CFM_PER_L_PER_S],
      [["m3/h", "m3/hr", "cmh"], CFM_PER_M3_PER_H],
    ],
    "cfm at 50 Pa": [
      [["l/s", "lps", "l/s50"], CFM_PER_L_PER_S],
      [["m3/h", "m3/hr", "m3/h50"], CFM_PER_M3_PER_H],
    ],
    "in. w.c.": [
      [["pa"], 1 / PA_PER_IN_WC],
      [["kpa"], 1_000 / PA_PER_IN_WC],
    ],
    "ft²": [[["m2", "sqm"], 1 / 0.3048 ** 2]],
    ft: [[["m", "meter", "meters", "metre", "metres"], 1 / 0.3048]],
    psig: [
      [["kpa", "kpag"], 1 / 6.894757],
      [["bar", "barg"], 100 / 6.894757],
    ],
    W: [[["kw"], 1_000]],
    kW: [[["w", "watt", "watts"], 0.001]],
  };

/** A unit as it is shown. A difference of temperatures is read apart from a temperature, and shown like one. */
export function shownUnit(unit: string): string {
  return unit === "Δ°F" ? "°F" : unit;
}

export type QuantityText =
  | {
      readonly ok: true;
      readonly value: number | null;
      /** Says what was turned into what, where another unit was typed. */
      readonly converted?: string;
    }
  | { readonly ok: false; readonly problem: string };

/**
 * Reads what a person typed or pasted for a quantity: `1,250 cfm`, `31 000`, `0.5"`, `75°`.
 * An empty text is "not given" (`null`), never zero. °C is turned into °F and `converted` says so; any other unit
 * that is not the field's is refused with the unit that is wanted and, where it is known, the number in it. Nothing is converted behind the person's back.
 */
export function readQuantityText(text: string, unit: string): QuantityText {
  if (/\d[⁰¹²³⁴-⁹]/u.test(text)) {
    // The mark of a footnote would become a digit: 24¹ is not 241.
    return { ok: false, problem: `“${text.trim()}” has a raised digit behind the number. Leave it out.` };
  }
  const trimmed = text.normalize("NFKC").replaceAll("−", "-").trim();
  if (trimmed === "") return { ok: true, value: null };
  const match = /^([+-]?(?:\d{1,3}(?:,\d{3})+|\d{1,3}(?: \d{3})+|\d+)?(?:\.\d*)?)\s*(.*)$/u.exec(trimmed);
  const digits = match?.[1]?.replaceAll(/[, ]/g, "") ?? "";
  const suffix = (match?.[2] ?? "").toLowerCase().replaceAll(/\s/gu, "");
  if (digits === "" || !/\d/.test(digits)) {
    return { ok: false, problem: `“${trimmed}” is not a number. Enter digits, for instance 1250 or 0.5.` };
  }
  if (/^,\d+/.test(suffix)) {
    return { ok: false, problem: `“${trimmed}”: use a point for decimals and a comma only for thousands.` };
  }
  const value = Number(digits);
  if (suffix === "" || suffix === unit.toLowerCase().replaceAll(/\s/gu, "")) return { ok: true, value };
  if ((SPELLINGS[unit] ?? []).includes(suffix)) return { ok: true, value };
  const other = CONVERTED[unit]?.find(({ spellings }) => spellings.includes(suffix));
  if (other !== undefined) {
    // Four digits: 24 °C is 75.2 °F, not 75.20000000000001.
    const turned = Number((value * other.scale + other.shift).toFixed(4));
    const shown = Number(turned.toFixed(2));
    return { ok: true, value: turned, converted: `${value} ${other.name} is ${shown} ${shownUnit(unit)}` };
  }
  if (/^[-–—+]?\d/.test(suffix)) {
    return { ok: false, problem: `“${trimmed}” is more than one number. Enter the one that counts.` };
  }
  const foreign = FOREIGN[unit]?.find(([spellings]) => spellings.includes(suffix));
  if (foreign !== undefined) {
    const turned = Number((value * foreign[1]).toPrecision(4)).toLocaleString("en-US", {
      maximumFractionDigits: 4,
    });
    return {
      ok: false,
      problem: `“${trimmed}” has another unit. This field is in ${shownUnit(unit)}: enter ${turned}, which is the same.`,
    };
  }
  const wanted = unit === "" ? "a plain number" : `in ${shownUnit(unit)}`;
  return { ok: false, problem: `“${trimmed}” has another unit. This field is ${wanted}.` };
}
