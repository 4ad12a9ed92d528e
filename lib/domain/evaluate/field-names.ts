import type { Finding } from "@/lib/engineering/findings";

/**
 * Findings name the inputs they used or miss as the engineering module calls them. This renames them to the
 * fields of the stage records, so that a screen can lead to the field; names without a field are left out.
 */
export function withFields(
  findings: readonly Finding[],
  fieldOf: (input: string) => string | null,
): readonly Finding[] {
  return findings.map((finding) => {
    const fields = finding.inputs.map(fieldOf).filter((field): field is string => field !== null);
    return { ...finding, inputs: [...new Set(fields)] };
  });
}

/** A renaming by table; a name not in the table that is itself a field stays. */
export function byTable(
  table: Readonly<Record<string, string | null>>,
  fields: Readonly<Record<string, unknown>>,
) {
  return (input: string): string | null => {
    if (input in table) return table[input] ?? null;
    return input in fields ? input : null;
  };
}
