import { STAGE_FIELDS, STAGE_NAMES, STAGE_SLUGS, type StageInputs, type StageKey } from "../stages";

/** What a forecast still needs, in words, and where it is entered. */
export type ForecastMissing = {
  /** `null`: not a field of a record, such as the weather file. */
  readonly at: { readonly stage: StageKey; readonly field: string } | null;
  readonly text: string;
};

/** A part of a forecast's input: there, or with all that keeps it from being there. */
export type ForecastPart<T> =
  | { readonly ready: true; readonly value: T }
  | { readonly ready: false; readonly missing: readonly ForecastMissing[] };

/** A field of a stage record that is empty. */
export function missingField<S extends StageKey>(
  stage: S,
  field: keyof StageInputs[S] & string,
  why = "",
): ForecastMissing {
  const label = STAGE_FIELDS[stage][field]?.label ?? field;
  return { at: { stage, field }, text: `${STAGE_NAMES[stage]}: ${label}${why === "" ? "" : ` (${why})`}` };
}

/** Something else that stands in the way. */
export function problem(text: string, at: ForecastMissing["at"] = null): ForecastMissing {
  return { at, text };
}

/** The page of a job that has the field. */
export function missingHref(jobId: string, { at }: ForecastMissing): string | null {
  return at === null ? null : `/jobs/${jobId}/${STAGE_SLUGS[at.stage]}#field-${at.field}`;
}

/** The empty fields of a stage among those needed. */
export function emptyFields<S extends StageKey>(
  inputs: StageInputs,
  stage: S,
  fields: readonly (keyof StageInputs[S] & string)[],
): readonly ForecastMissing[] {
  return fields
    .filter((field) => (inputs[stage][field] ?? null) === null)
    .map((field) => missingField(stage, field));
}
