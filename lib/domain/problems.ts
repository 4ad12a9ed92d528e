import type { z } from "zod";

/** One thing wrong with one field: which, why, and what would be right. */
export type FieldProblem = { readonly field: string; readonly message: string };

/** What a schema refused, each field by name: what is not known here is named like what is wrong. */
export function problemsOf({ issues }: z.ZodError): readonly FieldProblem[] {
  return issues.flatMap((issue) =>
    issue.code === "unrecognized_keys"
      ? issue.keys.map((key) => ({
          field: [...issue.path, key].join("."),
          message: `${key}: this is not known here. Leave it out, or look at its spelling.`,
        }))
      : [{ field: issue.path.join("."), message: issue.message }],
  );
}
