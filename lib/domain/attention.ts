import type { Finding } from "@/lib/engineering/findings";
import type { Evaluation } from "./evaluate";
import type { JobRecords } from "./jobs";
import { STAGE_NAMES, STAGES, type StageKey } from "./stages/keys";

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

export type WeakLink = { readonly stage: StageKey; readonly findings: readonly Finding[] };

/** What falls short, then what cannot be told, link by link of the chain; a link with neither, or not entered, is left out. */
export function weakLinks(records: JobRecords, evaluation: Evaluation): readonly WeakLink[] {
  return STAGES.filter((stage) => records[stage] !== null)
    .map((stage) => ({
      stage,
      findings: (["falls short", "can't tell"] as const).flatMap((verdict) =>
        evaluation.findings[stage].filter((finding) => finding.verdict === verdict),
      ),
    }))
    .filter(({ findings }) => findings.length > 0);
}
