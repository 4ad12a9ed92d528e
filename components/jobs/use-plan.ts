"use client";

import { useRouter } from "next/navigation";
import { useOptimistic, useState, useTransition } from "react";
import type { JobSummary } from "@/lib/domain/jobs";

export type Schedule = (
  input: unknown,
) => Promise<{ readonly ok: true } | { readonly ok: false; readonly message: string }>;
export type PlanOf = { readonly techIds: readonly string[]; readonly startupDue: string | null };

const OFFLINE = "No connection to the server. The plan is as it was; try again when there is one.";

/** Who goes and when, changed in place: shown at once, taken back with the reason when it is refused. */
export function usePlan(job: JobSummary, schedule: Schedule) {
  const router = useRouter();
  const kept: PlanOf = { techIds: job.techs.map((tech) => tech.userId), startupDue: job.startupDue };
  const [shown, show] = useOptimistic(kept);
  const [problem, setProblem] = useState<string | null>(null);
  const [busy, start] = useTransition();
  const save = (plan: PlanOf) =>
    start(async () => {
      show(plan);
      setProblem(null);
      try {
        const { id: jobId, version: expectedVersion, reviewDue } = job;
        const answer = await schedule({ jobId, expectedVersion, reviewDue, ...plan });
        if (!answer.ok) setProblem(answer.message);
      } catch {
        setProblem(OFFLINE);
      }
      router.refresh();
    });
  return { shown, save, busy, problem };
}
