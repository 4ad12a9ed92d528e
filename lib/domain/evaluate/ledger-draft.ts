import type { Column } from "../ledger";
import type { StageKey } from "../stages/keys";
import type { MeasuredStage } from "./measured-stage";
import type { JobResults } from "./results";

export type CellDraft = {
  readonly value: number | string | null;
  readonly uncertainty?: number | null;
  readonly note?: string | null;
  readonly at?: readonly [StageKey, string | null];
  /** Rules whose findings judge this cell. */
  readonly rules?: readonly string[];
};
export type LineDraft = {
  readonly key: string;
  readonly group: string;
  readonly label: string;
  readonly unit: string;
  readonly decimals: number;
} & { readonly [C in Column]?: CellDraft };

/** The measured stage of the startup, when it has readings. */
export function stageOf(results: JobResults, key: "first" | "second"): MeasuredStage | undefined {
  return results.startup.stages.find((one) => one.key === key);
}
