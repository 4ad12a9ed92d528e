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
  const fields = problemsIn(input, "", 0);
  if (fields.length > 0) throw invalidInput(fields);
}

/** No form is made of more lists within lists. */
const DEEPEST = 40;

function problemsIn(value: unknown, field: string, depth: number): FieldProblem[] {
  if (typeof value === "string")
    return UNSTORABLE.test(value)
      ? [{ field, message: "This text holds a character that cannot be kept. Delete it and type it again." }]
      : [];
  if (typeof value !== "object" || value === null) return [];
  if (depth === DEEPEST) return [{ field, message: "This is nested too deeply to be read. Send it again." }];
  return Object.entries(value).flatMap(([key, one]) => {
    // A form names its fields flat; the place in a list is the list's.
    const name = Array.isArray(value) ? field : key;
    return UNSTORABLE.test(name)
      ? [{ field, message: "The name of a field holds a character that cannot be kept. Send it again." }]
      : problemsIn(one, name, depth + 1);
  });
}
