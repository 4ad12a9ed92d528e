import { judgedJobs } from "@/lib/db/judged-jobs";
import { stageRecords } from "@/lib/db/stage-records";
import { withTenant } from "@/lib/db/with-tenant";
import { workItems } from "@/lib/db/work-items";
import { ENGINE_VERSION } from "@/lib/domain/evaluate";
import type { JobId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { deriveJob, evaluateRecords } from "./evaluate";
import { getJob } from "./jobs";

const BATCH = 50;

/** How far the work is. `after` is the last job that was done. */
export type Judged = { readonly done: number; readonly changed: number; readonly after: string | null };

const NOTHING: Judged = { done: 0, changed: 0, after: null };

/** Asks for every job of the company to be judged again, in the transaction that makes it necessary. */
export async function queueJudging(scope: TenantScope, why: string): Promise<void> {
  if ((await judgedJobs(scope).count()) === 0) return;
  await workItems(scope).add({
    task: "judge jobs again",
    title: `Judge all jobs again: ${why}`,
    key: "all jobs",
  });
}

/** Asks for it when the rules of this release are not those the jobs were judged by. */
export function queueJudgingAfterRelease(scope: TenantScope): Promise<void> {
  return withTenant(scope, async () => {
    if ((await workItems(scope).unfinished("judge jobs again")) !== null) return;
    if (await judgedJobs(scope).anyOfAnotherEngine(ENGINE_VERSION))
      await queueJudging(scope, "the product's rules have changed");
  });
}

/**
 * Brings verdicts, ledger lines and facts of all jobs to the limits and rules in force. Stage records stay as
 * they are: what is signed keeps the findings it was signed with.
 *
 * @param from - What an earlier try had done.
 * @param report - Called after each batch.
 * @returns What came of it, in words.
 */
export async function judgeAllAgain(
  scope: TenantScope,
  from: Judged | null,
  report: (at: Judged, total: number) => Promise<void>,
): Promise<string> {
  const total = await judgedJobs(scope).count();
  let at = from ?? NOTHING;
  for (;;) {
    const ids = await judgedJobs(scope).after(at.after, BATCH);
    if (ids.length === 0) break;
    for (const id of ids) {
      const changed = await judgeJob(scope, id);
      at = { done: at.done + 1, changed: at.changed + (changed ? 1 : 0), after: id };
    }
    await report(at, Math.max(total, at.done));
  }
  const jobs = at.done === 1 ? "1 job" : `${at.done} jobs`;
  const changed = at.changed === 1 ? "1 verdict changed" : `${at.changed} verdicts changed`;
  return `${jobs} judged, ${at.changed === 0 ? "no verdict changed" : changed}.`;
}

/** True when the job's verdict is another one now. Holds the job's lock, as a save does. */
export function judgeJob(scope: TenantScope, jobId: JobId): Promise<boolean> {
  return withTenant(scope, async () => {
    await stageRecords(scope).lock(jobId);
    const job = await getJob(scope, jobId);
    const records = await stageRecords(scope).latest(job.id);
    const derived = deriveJob(job, records, await evaluateRecords(scope, job, records));
    await judgedJobs(scope).rewrite(jobId, derived);
    return derived.verdict !== job.verdict;
  });
}

/** Says that what lists show may be older than the rules in force; `null` when it is not. */
export async function judgingNow(scope: TenantScope): Promise<string | null> {
  const work = await workItems(scope).unfinished("judge jobs again");
  if (work === null) return null;
  const far = work.total === null ? "" : `: ${work.done} of ${work.total} done`;
  return `Verdicts are being brought up to the limits in force${far}.`;
}
