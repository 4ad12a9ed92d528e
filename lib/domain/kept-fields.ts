import { fieldSchema } from "./field-schema";
import type { FieldDefs } from "./fields";
import type { FieldProblem } from "./problems";

type Values = Readonly<Record<string, unknown>>;

/** What can be kept of a form whose fields stand by themselves: a value that cannot be read keeps the saved one. */
export function keptFields(
  fields: FieldDefs,
  saved: Values,
  typed: Values,
): { readonly values: Values; readonly problems: readonly FieldProblem[] } {
  const problems: FieldProblem[] = [];
  const entries = Object.entries(fields).map(([key, field]) => {
    const read = fieldSchema(field).safeParse(typed[key] ?? null);
    if (read.success) return [key, read.data ?? null];
    problems.push({
      field: key,
      message: read.error.issues[0]?.message ?? `${field.label}: enter it again.`,
    });
    return [key, saved[key] ?? null];
  });
  return { values: Object.fromEntries(entries), problems };
}
