import type { FieldProblem } from "@/lib/domain/problems";
import { invalidInput } from "@/lib/errors";

/** PostgreSQL keeps no NUL character and no half of a surrogate pair. */
const UNSTORABLE = /\0|\p{Surrogate}/u;

/**
 * Refuses text that no database column can hold, wherever it stands in the input.
 *
 * @throws AppError `INVALID_INPUT` naming each field.
 */
export function refuseUnstorableText(input: unknown): void {
  const fields = problemsIn(input, "");
  if (fields.length > 0) throw invalidInput(fields);
}

function problemsIn(value: unknown, field: string): FieldProblem[] {
  if (typeof value === "string")
    return UNSTORABLE.test(value)
      ? [{ field, message: "This text holds a character that cannot be kept. Delete it and type it again." }]
      : [];
  if (typeof value !== "object" || value === null) return [];
  // A form names its fields flat; the place in a list is the list's.
  return Object.entries(value).flatMap(([key, one]) => problemsIn(one, Array.isArray(value) ? field : key));
}
