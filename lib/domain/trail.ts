import { dayText } from "./date-text";
import type { FieldDef } from "./fields";
import { isUuid } from "./ids";
import { findTrailField } from "./trail-labels";

/** A value as the trail shows it. `none`: nothing was there. */
export type TrailValue =
  | { readonly kind: "quantity"; readonly value: number; readonly unit: string; readonly decimals: number }
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "none" };

/** One thing an entry changed. `before` is `null` when the entry does not tell what was there. */
export type TrailChange = {
  readonly key: string;
  readonly label: string;
  readonly before: TrailValue | null;
  readonly after: TrailValue;
};

const NONE: TrailValue = { kind: "none" };

type Entry = {
  readonly action: string;
  readonly entity: string;
  readonly before: unknown;
  readonly after: unknown;
};

/** Id → name of everything an entry may point at. */
export type Names = ReadonlyMap<string, string>;

/** Of no use to a reader: it only guards against two people saving at once. */
const HIDDEN = new Set(["expectedVersion"]);

/** What an entry changed, each value in words and units, in the order in which it was written. */
export function trailChanges(entry: Entry, names: Names): readonly TrailChange[] {
  const tellsBefore = isObject(entry.before);
  const before = flat(entry.before);
  const after = flat(entry.after);
  const absent = entry.entity === "rule limits" ? text("seed value") : NONE;
  const keys = [...new Set([...after.keys(), ...before.keys()])].filter((key) => !HIDDEN.has(key));
  return keys
    .filter((key) => !same(before.get(key), after.get(key)))
    .map((key) => {
      const field = findTrailField(entry.action, entry.entity, key);
      const written = (value: unknown) => (isNothing(value) ? absent : shown(field, value, names));
      return {
        key,
        label: field?.label ?? inWords(key),
        before: tellsBefore ? written(before.get(key)) : null,
        after: written(after.get(key)),
      };
    });
}

/** Every id an entry's values point at. */
export function idsIn(entry: Pick<Entry, "before" | "after">): readonly string[] {
  return [...flat(entry.before).values(), ...flat(entry.after).values()]
    .flat()
    .filter((value): value is string => typeof value === "string" && isUuid(value));
}

function shown(field: FieldDef | null, value: unknown, names: Names): TrailValue {
  if (Array.isArray(value)) {
    const parts = value.map((one) => shown(field, one, names));
    return text(parts.map((part) => (part.kind === "text" ? part.text : "—")).join(", "));
  }
  if (typeof value === "number") {
    return field?.kind === "number"
      ? { kind: "quantity", value, unit: field.unit, decimals: digits(value, field.decimals) }
      : text(String(value));
  }
  if (typeof value === "boolean") return text(value ? "yes" : "no");
  if (typeof value !== "string") return text(JSON.stringify(value));
  if (field?.kind === "choice") {
    return text(field.options.find((option) => option.value === value)?.label ?? value);
  }
  if (field?.kind === "date" && /^\d{4}-\d{2}-\d{2}$/.test(value)) return text(dayText(value));
  return text(names.get(value.toLowerCase()) ?? (isUuid(value) ? unnamed(field) : value));
}

/** Logs are many and belong to one job, so that their names are not looked up here. */
function unnamed(field: FieldDef | null): string {
  return field?.kind === "reference" && field.to === "log" ? "a log of the house" : "no longer listed";
}

/** The trail never hides a difference by rounding it away. */
function digits(value: number, wanted: number): number {
  const written = /\.(\d+)$/.exec(String(value))?.[1]?.length ?? 0;
  return Math.min(Math.max(written, wanted), 6);
}

/** An entry's object with its parts side by side: `{ home: { city } }` → `home.city`. Arrays stay whole. */
function flat(value: unknown, prefix = ""): Map<string, unknown> {
  if (!isObject(value)) return new Map();
  return new Map(
    Object.entries(value).flatMap(([key, part]) =>
      isObject(part) ? [...flat(part, `${prefix}${key}.`)] : [[`${prefix}${key}`, part] as const],
    ),
  );
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function isNothing(value: unknown): boolean {
  return (
    value === null || value === undefined || value === "" || (Array.isArray(value) && value.length === 0)
  );
}

/** Two ways to hold nothing are the same. */
function same(one: unknown, other: unknown): boolean {
  return JSON.stringify(isNothing(one) ? null : one) === JSON.stringify(isNothing(other) ? null : other);
}

function text(words: string): TrailValue {
  return { kind: "text", text: words };
}

/** `fanRunOnSeconds` → `Fan run on seconds`, for a key of an older or newer release. */
function inWords(key: string): string {
  const words = key
    .replaceAll(/[._]/g, " ")
    .replaceAll(/([a-z])([A-Z])/g, "$1 $2")
    .toLowerCase();
  return words.charAt(0).toUpperCase() + words.slice(1);
}
