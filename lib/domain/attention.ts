import type { Evaluation } from "./evaluate";
import type { JobRecords } from "./jobs";
import { STAGE_NAMES, STAGES } from "./stages/keys";

/** Why a job needs someone's eye, in words that say what and where. Most pressing first. */
export function attentionReasons(
  job: { readonly techs: readonly unknown[]; readonly startupDue: string | null },
  records: JobRecords,
  evaluation: Evaluation,
): readonly string[] {
  const weak = STAGES.filter((stage) => records[stage] !== null).flatMap((stage) =>
    evaluation.findings[stage]
      .filter((finding) => finding.verdict === "falls short" && finding.binding)
      .map((finding) => `${STAGE_NAMES[stage]}: ${finding.title} falls short`),
  );
  const unassigned =
    job.startupDue !== null && job.techs.length === 0 && records.startup_record?.state !== "signed";
  return [...new Set(weak), ...(unassigned ? ["No tech is assigned to the startup"] : [])];
}
