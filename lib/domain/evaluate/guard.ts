import { isEngineeringError } from "@/lib/engineering/errors";
import { type Finding, notMeasured, type Rule } from "@/lib/engineering/findings";

const possibleRule: Rule = {
  id: "job.inputs-possible",
  title: "Inputs can be computed with",
  equation: "every input inside the range in which its equation is valid",
  basis: { kind: "physics", source: "the valid range stated at each equation", certainty: "computed" },
  limits: [],
  checkedBy: "tests/domain/evaluate.test.ts",
};

export const jobRules = { inputsPossible: possibleRule } as const satisfies Record<string, Rule>;

/** A draft may hold a combination no equation covers. That is a finding of its own stage, never a broken page. */
export function guarded(find: () => readonly Finding[]): readonly Finding[] {
  return attempt(find, (message) => [refusal(message)]);
}

/** The finding for inputs no equation covers, with the reason in it. */
export function refusal(message: string): Finding {
  return { ...notMeasured(possibleRule, [], "Check the value named here."), statement: `${message}.` };
}

/** Computes; a refusal of the engineering module is handed on, anything else is a defect and thrown. */
export function attempt<T>(compute: () => T, refused: (message: string) => T): T {
  try {
    return compute();
  } catch (error) {
    if (isEngineeringError(error)) return refused(error.message);
    throw error;
  }
}
