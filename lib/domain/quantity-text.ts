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

export type QuantityText =
  | { readonly ok: true; readonly value: number | null }
  | { readonly ok: false; readonly problem: string };

/**
 * Reads what a person typed or pasted for a quantity: `1,250 cfm`, `0.5"`, `24 kBtu/h`, `75°`.
 * An empty text is "not given" (`null`), never zero. A unit that is not the field's is refused with
 * the unit that is wanted, never converted behind the person's back.
 */
export function readQuantityText(text: string, unit: string): QuantityText {
  const trimmed = text.normalize("NFKC").replaceAll("−", "-").trim();
  if (trimmed === "") return { ok: true, value: null };
  const match = /^([+-]?(?:\d{1,3}(?:,\d{3})+|\d+)?(?:\.\d*)?)\s*(.*)$/u.exec(trimmed);
  const digits = match?.[1]?.replaceAll(",", "") ?? "";
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
  const wanted = unit === "" ? "a plain number" : `in ${unit}`;
  return { ok: false, problem: `“${trimmed}” has another unit. This field is ${wanted}.` };
}
