/** One thing wrong with one field: which, why, and what would be right. */
export type FieldProblem = { readonly field: string; readonly message: string };
