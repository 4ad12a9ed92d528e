/** The kind of failure and where, without the message, which may hold what a person typed. */
export function failureFacts(error: unknown): {
  readonly kind: string;
  readonly code?: string;
  readonly stack?: string;
} {
  if (!(error instanceof Error)) return { kind: typeof error };
  const code = "code" in error ? String(error.code) : undefined;
  const stack = error.stack
    ?.split("\n")
    .filter((line) => /^\s+at /.test(line))
    .slice(0, 8)
    .join("\n");
  return { kind: error.name, code, stack };
}
