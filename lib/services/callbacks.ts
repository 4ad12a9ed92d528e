import { callbacks } from "@/lib/db/callbacks";
import { jobList } from "@/lib/db/job-list";
import { stageRecords } from "@/lib/db/stage-records";
import { withTenant } from "@/lib/db/with-tenant";
import { type Callback, outcomeToSign, usualDueDate } from "@/lib/domain/callbacks";
import { asId, type CallbackId } from "@/lib/domain/ids";
import type { JobSummary } from "@/lib/domain/jobs";
import type { TenantScope } from "@/lib/domain/scope";
import { invalidInput, notFound } from "@/lib/errors";
import type { CallbackListQuery, LogCallbackInput, WorkCallbackInput } from "@/lib/schemas/callback";
import { callbackEvidence } from "./callback-evidence";
import { queueComplaintMail } from "./company-mail/complaint-mail";
import { companyToday } from "./company-today";
import { jobView } from "./job-view";
import { getJob } from "./jobs";
import { tellWebhooks } from "./tell-webhooks";

export const CALLBACKS_A_PAGE = 50;

/** Takes a complaint down and keeps beside it what the job's record says at that moment. */
export function logCallback(scope: TenantScope, input: LogCallbackInput): Promise<CallbackId> {
  return withTenant(scope, async () => {
    const jobId = asId<"job">(input.jobId);
    await stageRecords(scope).lock(jobId);
    const view = await jobView(scope, jobId);
    const evidence = await callbackEvidence(scope, view, input.reportedOn);
    const dueOn = input.dueOn ?? usualDueDate({ ...input, fix: "", fixedOn: null, outcome: null });
    const callbackId = await callbacks(scope).add({ ...input, jobId, evidence, dueOn });
    const about = { jobNumber: view.job.number, reportedOn: input.reportedOn };
    await queueComplaintMail(scope, { callbackId, why: "came in", version: 1 }, about);
    await tellWebhooks(scope, "callback.opened", `${callbackId} 1`, {
      jobId,
      jobNumber: view.job.number,
      callbackId,
      kind: input.kind,
      reportedOn: input.reportedOn,
      again: false,
    });
    return callbackId;
  });
}

/** Keeps cause, fix and outcome. */
export function workOnCallback(scope: TenantScope, input: WorkCallbackInput): Promise<{ jobId: string }> {
  return withTenant(scope, async () => {
    const { callbackId, expectedVersion, signOutcome, ...work } = input;
    const id = asId<"callback">(callbackId);
    const jobId = await callbacks(scope).jobOf(id);
    if (!jobId) throw notFound();
    await stageRecords(scope).lock(jobId);
    const before = await callbacks(scope).find(id);
    if (!before) throw notFound();
    const toSign = outcomeToSign(before, work);
    if (toSign && signOutcome !== "on") {
      throw invalidInput([
        { field: "signOutcome", message: "Sign the outcome: tick that you have checked it yourself." },
      ]);
    }
    // A date left as it was moves on with the state; one that was changed stays as given.
    const dueOn =
      work.dueOn === before.dueOn || work.dueOn === null
        ? usualDueDate({ ...work, reportedOn: before.reportedOn })
        : work.dueOn;
    await callbacks(scope).work(
      jobId,
      id,
      expectedVersion,
      { ...work, dueOn },
      toSign ? "signed now" : "as before",
    );
    return { jobId };
  });
}

export type CallbackPage = {
  readonly callbacks: readonly Callback[];
  readonly of: number;
  /** On the company's clock, so that what is overdue is so there. */
  readonly today: string;
};

/** A page of the company's callbacks, open ones first, the most pressing on top. */
export function listCallbacks(scope: TenantScope, query: CallbackListQuery): Promise<CallbackPage> {
  const filter = { jobId: null, state: query.state, kind: query.kind };
  return withTenant(scope, async () => ({
    callbacks: await callbacks(scope).list(filter, {
      take: CALLBACKS_A_PAGE,
      skip: (query.page - 1) * CALLBACKS_A_PAGE,
    }),
    of: await callbacks(scope).count(filter),
    today: await companyToday(scope),
  }));
}

/** More callbacks than any house has had. */
const OF_ONE_JOB = 1_000;

/** The callbacks of one job. */
export async function jobCallbacks(scope: TenantScope, jobId: string): Promise<readonly Callback[]> {
  const job = await getJob(scope, jobId);
  return callbacks(scope).list({ jobId: job.id, state: null, kind: null }, { take: OF_ONE_JOB, skip: 0 });
}

const JOBS_FOUND = 10;

/** Jobs a caller may mean, by name, street or number. */
export async function findJobs(
  scope: TenantScope,
  search: string,
): Promise<readonly (JobSummary & { readonly addressLine: string })[]> {
  if (search === "") return [];
  const question = {
    search,
    stage: null,
    verdict: null,
    techId: null,
    needsAttention: false,
    openCallback: false,
    due: null,
    sort: "number",
    descending: true,
  } as const;
  const found = await jobList(scope).page(question, { take: JOBS_FOUND, after: null, before: null });
  // Two houses of one street are told apart by their numbers.
  const addresses = await jobList(scope).addresses(found.map(({ id }) => id));
  return found.map((job) => ({ ...job, addressLine: addresses.get(job.id) ?? "" }));
}
