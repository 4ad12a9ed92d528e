import { equipmentRules } from "@/lib/engineering/equipment";
import type { Finding } from "@/lib/engineering/findings";
import { startupRules } from "@/lib/engineering/startup";
import type { Evaluation } from "./evaluate";

export type DryAnswer = {
  readonly answer: "yes" | "no" | "can't tell" | "not measured";
  readonly sentence: string;
  /** What speaks against it, or what is missing; worst first. */
  readonly reasons: readonly Finding[];
};

/** Findings of the design that decide dryness, beside everything measured and every control setting. */
const DESIGN_RULES: ReadonlySet<string> = new Set([equipmentRules.humidityCapability.id]);

/**
 * The one question before leaving: will this house be dry? `yes` needs the moisture removal measured and met;
 * anything binding that falls short makes it `no`; what was not measured is never taken for good.
 */
export function dryAnswer({ findings }: Pick<Evaluation, "findings">): DryAnswer {
  const all = [
    ...findings.startup_record,
    ...findings.control_setup,
    ...findings.equipment_selection.filter((one) => DESIGN_RULES.has(one.ruleId)),
  ].filter((one) => one.binding);
  const against = all.filter((one) => one.verdict === "falls short");
  if (against.length > 0) {
    const one = against.length === 1;
    return {
      answer: "no",
      sentence: `Not as it stands: ${against.length} ${one ? "thing falls" : "things fall"} short.`,
      reasons: against,
    };
  }
  const moisture = all.filter((one) => one.ruleId === startupRules.moistureRemoval.id);
  const measured = moisture.filter((one) => one.verdict !== "not measured");
  if (measured.length === 0) {
    return {
      answer: "not measured",
      sentence: "Nobody can say: the moisture removal has not been measured.",
      reasons: moisture,
    };
  }
  const unsure = all.filter((one) => one.verdict === "can't tell");
  if (measured.some((one) => one.verdict !== "meets")) {
    return {
      answer: "can't tell",
      sentence: "Can’t tell yet with these readings. What would settle it stands below.",
      reasons: unsure,
    };
  }
  return {
    answer: "yes",
    sentence: "Yes, as far as these readings tell: it takes out the water it should.",
    reasons: unsure,
  };
}
