import type { FieldProblem } from "@/lib/domain/problems";

/** What an action answers that keeps something and says under which id. */
export type Kept<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly message: string; readonly fields: readonly FieldProblem[] };
