import type { Finding, Verdict } from "@/lib/engineering/findings";
import { STAGES, type StageKey } from "./stages/keys";

type ByStage = Readonly<Record<StageKey, readonly Finding[]>>;

/** A check of a job whose verdict is another one; `null`: it says nothing then. */
export type FindingChange = {
  readonly title: string;
  readonly from: Verdict | null;
  readonly to: Verdict | null;
};

/**
 * The checks that come out otherwise, stage by stage. A rule that speaks several times in a stage (once each stage of
 * the system) is compared in its order.
 */
export function changedFindings(before: ByStage, after: ByStage): readonly FindingChange[] {
  return STAGES.flatMap((stage) => {
    const ids = new Set([...before[stage], ...after[stage]].map((one) => one.ruleId));
    return [...ids].flatMap((id) => {
      const was = before[stage].filter((one) => one.ruleId === id);
      const is = after[stage].filter((one) => one.ruleId === id);
      return Array.from({ length: Math.max(was.length, is.length) }, (_, at) => ({
        title: (was[at] ?? is[at])?.title ?? id,
        from: was[at]?.verdict ?? null,
        to: is[at]?.verdict ?? null,
      })).filter(({ from, to }) => from !== to);
    });
  });
}
