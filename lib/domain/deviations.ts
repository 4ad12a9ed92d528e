import type { Finding } from "@/lib/engineering/findings";

/** Rule → why this job departs from its limit. */
export type Deviations = Readonly<Record<string, string>>;

/** A rule's id holds no colon, so that one line is one reason. */
const LINE = /^([a-z0-9.-]+): (.+)$/i;

/** Reads the field that keeps the reasons, one line a rule. */
export function readDeviations(text: string | null): Deviations {
  const lines = (text ?? "").split("\n").flatMap((line) => {
    const [, rule, reason] = LINE.exec(line.trim()) ?? [];
    return rule === undefined || reason === undefined ? [] : [[rule, reason] as const];
  });
  return Object.fromEntries(lines);
}

/** The field's text with one reason set; an empty reason takes it away, an empty field is `null`. */
export function withDeviation(text: string | null, ruleId: string, reason: string): string | null {
  const said = reason.replaceAll(/\s+/g, " ").trim();
  const { [ruleId]: _old, ...others } = readDeviations(text);
  const all = said === "" ? others : { ...others, [ruleId]: said };
  const lines = Object.entries(all).map(([rule, one]) => `${rule}: ${one}`);
  return lines.length === 0 ? null : lines.join("\n");
}

/** Says the recorded reason with each finding that falls short. The verdict stays what it is. */
export function withReasons(findings: readonly Finding[], text: string | null): readonly Finding[] {
  const reasons = readDeviations(text);
  return findings.map((finding) => {
    const reason = reasons[finding.ruleId];
    return finding.verdict !== "falls short" || reason === undefined
      ? finding
      : { ...finding, statement: `${finding.statement} Recorded reason: ${reason}` };
  });
}
