"use client";

import { useRouter } from "next/navigation";
import { useOptimistic, useState, useTransition } from "react";
import { heard } from "@/components/forms/still-there";
import type { Choice } from "@/components/ui/choice-fields";
import { asId } from "@/lib/domain/ids";
import type { JobSummary } from "@/lib/domain/jobs";

export type Schedule = (
  input: unknown,
) => Promise<{ readonly ok: true } | { readonly ok: false; readonly message: string }>;
export type PlanOf = { readonly techIds: readonly string[]; readonly startupDue: string | null };
/** A job as it is planned on the screen, ahead of the server while it is being saved. */
export type PlannedJob = JobSummary & { readonly saving: boolean };

type Move = { readonly jobId: string; readonly plan: PlanOf };

const OFFLINE = "No connection to the server. The plan is as it was; try again when there is one.";

/** Who goes and when, changed in place: shown at once, taken back with the reason when it is refused. */
export function usePlans(jobs: readonly JobSummary[], techs: readonly Choice[], schedule: Schedule) {
  const router = useRouter();
  const [shown, show] = useOptimistic(
    jobs.map((job): PlannedJob => ({ ...job, saving: false })),
    (now, { jobId, plan }: Move) => now.map((job) => (job.id === jobId ? planned(job, plan, techs) : job)),
  );
  const [problems, setProblems] = useState<Readonly<Record<string, string | null>>>({});
  const [, start] = useTransition();
  const save = (job: JobSummary, plan: PlanOf) =>
    start(async () => {
      const say = (problem: string | null) => setProblems((now) => ({ ...now, [job.id]: problem }));
      show({ jobId: job.id, plan });
      say(null);
      try {
        const { id: jobId, version: expectedVersion, reviewDue } = job;
        const answer = heard(await schedule({ jobId, expectedVersion, reviewDue, ...plan }));
        if (!answer.ok) say(answer.message);
      } catch {
        say(OFFLINE);
      }
      router.refresh();
    });
  return { shown, save, problemOf: (job: JobSummary) => problems[job.id] ?? null };
}

function planned(job: JobSummary, plan: PlanOf, techs: readonly Choice[]): PlannedJob {
  const assigned = plan.techIds.map((userId) => ({
    userId: asId<"user">(userId),
    name:
      techs.find((one) => one.value === userId)?.label ??
      job.techs.find((tech) => tech.userId === userId)?.name ??
      "someone who has left",
  }));
  return { ...job, techs: assigned, startupDue: plan.startupDue, saving: true };
}
