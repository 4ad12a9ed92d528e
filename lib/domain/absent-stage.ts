import type { JobContext } from "./evaluate/context";
import { stageCount } from "./evaluate/controls";

/** Settings and ledger lines, by key, that mean nothing on equipment with one stage. */
const OF_TWO_STAGES: ReadonlySet<string> = new Set([
  "firstStageAirflowSetting",
  "secondStageStartOffsetF",
  "stepBackToFirstStage",
  "airflow-first",
  "second-stage-offset",
  "second-stage-share",
]);

/** Whether a setting or a ledger line is of a stage that the job's equipment does not have; never before it is chosen. */
export function isOfAbsentStage(context: JobContext, key: string): boolean {
  return stageCount(context) === 1 && OF_TWO_STAGES.has(key);
}
