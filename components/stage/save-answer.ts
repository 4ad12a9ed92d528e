import type { FieldProblem } from "@/lib/domain/problems";

/** What the action that saves a stage record answers. */
export type SaveAnswer =
  | { readonly ok: true; readonly value: { readonly version: number } }
  | {
      readonly ok: false;
      readonly code: string;
      readonly message: string;
      readonly fields: readonly FieldProblem[];
      readonly details: Readonly<Record<string, unknown>>;
    };
