/**
 * A stage record is a flat set of fields. Each is defined once, here; the zod schema, the form, the
 * trail's labels, the ledger's links and the PDF read that one definition. The schema is made in `field-schema.ts`, so that
 * a phone shows fields without carrying zod.
 */
type Common = {
  readonly label: string;
  /** Heading under which the form shows the field. */
  readonly group: string;
  readonly help?: string;
  /** True when the record cannot be signed without it. */
  readonly neededToSign?: boolean;
};

export type NumberFieldDef = Common & {
  readonly kind: "number";
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  readonly decimals: number;
  /** True for a difference of temperatures: °C typed there has no 32 in it. */
  readonly isDifference?: boolean;
};
export type ChoiceFieldDef = Common & {
  readonly kind: "choice";
  readonly options: readonly { readonly value: string; readonly label: string }[];
};
export type YesNoFieldDef = Common & { readonly kind: "yes-no" };
export type TextFieldDef = Common & { readonly kind: "text"; readonly maxLength: number };
export type DateFieldDef = Common & { readonly kind: "date" };
/** Names a row of the catalog or a setting of the chosen model; the screen offers what exists. */
export type ReferenceFieldDef = Common & {
  readonly kind: "reference";
  readonly to: "equipment" | "control" | "instrument" | "capacity setting" | "airflow setting" | "log";
};
export type FieldDef =
  | NumberFieldDef
  | ChoiceFieldDef
  | YesNoFieldDef
  | TextFieldDef
  | DateFieldDef
  | ReferenceFieldDef;

export type FieldDefs = Readonly<Record<string, FieldDef>>;

type ValueOf<F extends FieldDef> = F extends { kind: "number" }
  ? number
  : F extends { kind: "choice"; options: readonly { value: infer V }[] }
    ? V
    : F extends { kind: "yes-no" }
      ? boolean
      : string;

/** The inputs a set of fields holds. `null` means: not given. */
export type InputsOf<F extends FieldDefs> = { readonly [K in keyof F]: ValueOf<F[K]> | null };

/** Declares fields and keeps their exact types. */
export function defineFields<const F extends FieldDefs>(fields: F): F {
  return fields;
}

/** Every field empty. */
export function emptyInputs<F extends FieldDefs>(fields: F): InputsOf<F> {
  return Object.fromEntries(Object.keys(fields).map((key) => [key, null])) as InputsOf<F>;
}

/** Labels of the fields a record still needs before it can be signed. */
export function missingToSign(
  fields: FieldDefs,
  inputs: Readonly<Record<string, unknown>>,
): readonly string[] {
  return Object.entries(fields)
    .filter(([key, field]) => field.neededToSign === true && (inputs[key] ?? null) === null)
    .map(([key]) => key);
}

/** The unit a field's text is read in. */
export function readUnit(field: Pick<NumberFieldDef, "unit" | "isDifference">): string {
  return field.isDifference === true ? `Δ${field.unit}` : field.unit;
}

/** Shorthands, so that a definition reads as one line. */
export const number = <
  const D extends {
    readonly label: string;
    readonly unit: string;
    readonly min: number;
    readonly max: number;
    readonly decimals: number;
    readonly group: string;
    readonly help?: string;
    readonly neededToSign?: boolean;
    readonly isDifference?: boolean;
  },
>(
  definition: D,
) => ({ kind: "number", ...definition }) as const;

export const yesNo = (definition: Common) => ({ kind: "yes-no", ...definition }) as const;
export const date = (definition: Common) => ({ kind: "date", ...definition }) as const;
export const text = (definition: Common & { readonly maxLength?: number }) =>
  ({ kind: "text", maxLength: 2_000, ...definition }) as const;
export const reference = (definition: Common & { readonly to: ReferenceFieldDef["to"] }) =>
  ({ kind: "reference", ...definition }) as const;
export const choice = <const V extends string>(
  definition: Common & { readonly options: readonly { readonly value: V; readonly label: string }[] },
) => ({ kind: "choice", ...definition }) as const;
export type FieldGroup = {
  readonly title: string;
  readonly fields: readonly (readonly [string, FieldDef])[];
};

/** The fields under their headings, both in the order of the definition. */
export function fieldGroups(fields: FieldDefs): readonly FieldGroup[] {
  const groups = new Map<string, (readonly [string, FieldDef])[]>();
  for (const entry of Object.entries(fields)) {
    const title = entry[1].group;
    groups.set(title, [...(groups.get(title) ?? []), entry]);
  }
  return [...groups].map(([title, entries]) => ({ title, fields: entries }));
}
