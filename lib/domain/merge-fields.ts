import { fieldSchema } from "./field-schema";
import type { FieldDefs } from "./fields";
import type { FieldProblem } from "./problems";
import type { StageKey } from "./stages/keys";
import { refusePhysics } from "./stages/physics";

export type PlainValue = string | number | boolean | null;
type Values = Readonly<Record<string, unknown>>;

/** A value entered on a device, with the value that stood there when it was entered. */
export type FieldChange = { readonly base: PlainValue; readonly value: PlainValue };
export type FieldChanges = Readonly<Record<string, FieldChange>>;

/** Two people entered two values. The record keeps `theirs` until a person decides; `mine` goes back to its device. */
export type FieldConflict = {
  readonly field: string;
  readonly theirs: PlainValue;
  readonly mine: PlainValue;
};

export type Merged = {
  readonly inputs: Values;
  /** What the record holds of the device's changes, as the fields read it: the device's next base. */
  readonly accepted: Readonly<Record<string, PlainValue>>;
  readonly conflicts: readonly FieldConflict[];
  /** Values that cannot be kept; every other field is. */
  readonly problems: readonly FieldProblem[];
};

/**
 * Merges a device's changes into a record field by field. A field that still holds what the device
 * started from takes the new value; one that already holds the new value stays; anything else is a conflict.
 */
export function mergeFields(
  stage: StageKey,
  fields: FieldDefs,
  current: Values,
  changes: FieldChanges,
): Merged {
  const conflicts: FieldConflict[] = [];
  const problems: FieldProblem[] = [];
  const wanted = new Map<string, PlainValue>();
  const accepted: Record<string, PlainValue> = {};
  for (const [key, change] of Object.entries(changes)) {
    const field = Object.hasOwn(fields, key) ? fields[key] : undefined;
    if (field === undefined) {
      problems.push({ field: key, message: `This record has no field “${key}”.` });
      continue;
    }
    const read = fieldSchema(field).safeParse(change.value);
    if (!read.success) {
      problems.push({ field: key, message: read.error.issues[0]?.message ?? "This cannot be used." });
      continue;
    }
    const mine = (read.data ?? null) as PlainValue;
    const theirs = (current[key] ?? null) as PlainValue;
    if (theirs === mine) accepted[key] = mine;
    else if (theirs === change.base) wanted.set(key, mine);
    else conflicts.push({ field: key, theirs, mine });
  }
  const possible = withoutContradictions(stage, current, wanted);
  for (const [key, value] of wanted) if (possible.inputs[key] === value) accepted[key] = value;
  return { inputs: possible.inputs, accepted, conflicts, problems: [...problems, ...possible.problems] };
}

/**
 * Takes the values one by one, leaving out what would make the record contradict itself. A value that was
 * left out is tried again when another came in: a swapped pair, or the confirmation that it is true.
 */
function withoutContradictions(stage: StageKey, current: Values, wanted: ReadonlyMap<string, PlainValue>) {
  let inputs: Values = current;
  const left = new Map(wanted);
  const problems = new Map<string, FieldProblem>();
  for (let before = -1; before !== left.size; ) {
    before = left.size;
    for (const [key, value] of left) {
      const next = { ...inputs, [key]: value };
      const known = refusePhysics(stage, inputs).map((one) => one.field);
      const raised = refusePhysics(stage, next).find((one) => !known.includes(one.field));
      if (raised) {
        problems.set(key, { field: key, message: raised.message });
        continue;
      }
      inputs = next;
      left.delete(key);
      problems.delete(key);
    }
  }
  return { inputs, problems: [...problems.values()] };
}
