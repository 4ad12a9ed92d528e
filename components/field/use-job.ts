import { useMemo } from "react";
import type { JobContext } from "@/lib/domain/evaluate";
import type { PlainValue } from "@/lib/domain/merge-fields";
import type { StartupRecordInputs } from "@/lib/domain/stages/startup-record";
import { startupWalk, type WalkScreen } from "@/lib/domain/startup-walk";
import { type FieldJob, recordOf } from "@/lib/offline/bundle";
import { type Draft, emptyDraft, valuesOf } from "@/lib/offline/draft";
import type { PhoneState } from "@/lib/offline/phone-state";

/** One job as it stands on this phone. */
export type Work = {
  readonly job: FieldJob;
  readonly state: PhoneState;
  readonly draft: Draft;
  readonly values: Readonly<Record<string, PlainValue>>;
  /** What findings follow from, with what was entered here. */
  readonly context: JobContext;
  readonly screens: readonly WalkScreen[];
};

export function useJob(state: PhoneState, jobId: string | null): Work | null {
  const job = state.bundle?.jobs.find((one) => one.id === jobId) ?? null;
  const kept = jobId === null ? undefined : state.drafts[jobId];
  return useMemo(() => {
    if (job === null) return null;
    const draft = kept ?? emptyDraft(recordOf(job));
    const values = valuesOf(draft);
    const context = withReadings(job, draft);
    return { job, state, draft, values, context, screens: startupWalk(context, values) };
  }, [job, kept, state]);
}

/** A text that cannot be read yet counts as not entered. */
function withReadings(job: FieldJob, draft: Draft): JobContext {
  const known = recordOf(job);
  const readable = Object.entries(valuesOf(draft)).map(
    ([key, value]) =>
      [key, draft.pending[key]?.held?.why === "problem" ? (known[key] ?? null) : value] as const,
  );
  const startup = { ...known, ...Object.fromEntries(readable) } as unknown as StartupRecordInputs;
  const measuredOn = job.context.measuredOn ?? new Date().toISOString().slice(0, 10);
  return { ...job.context, measuredOn, inputs: { ...job.context.inputs, startup_record: startup } };
}
