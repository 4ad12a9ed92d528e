import { jobs } from "@/lib/db/jobs";
import { asId, isUuid, type JobId } from "@/lib/domain/ids";
import type { Job, JobSummary } from "@/lib/domain/jobs";
import type { TenantScope } from "@/lib/domain/scope";
import { notFound } from "@/lib/errors";
import type { CreateJobInput, JobListQuery, ScheduleJobInput } from "@/lib/schemas/job";

const PAGE = 50;

/** Opens a job for a customer and a home. */
export function createJob(scope: TenantScope, input: CreateJobInput): Promise<JobId> {
  return jobs(scope).create({
    title: input.title,
    customer: { name: input.customerName, email: input.customerEmail, phone: input.customerPhone },
    home: {
      addressLine: input.addressLine,
      city: input.city,
      region: input.region,
      postalCode: input.postalCode,
      elevationFt: input.elevationFt,
      builder: input.builder,
    },
    weatherFileId: input.weatherFileId,
    startupDue: input.startupDue,
    reviewDue: input.reviewDue,
    techIds: input.techIds,
    note: input.note,
  });
}

/** Sets who is assigned and when it is due. */
export function scheduleJob(scope: TenantScope, input: ScheduleJobInput): Promise<void> {
  return jobs(scope).schedule(asId<"job">(input.jobId), input);
}

export type JobsPage = { readonly jobs: readonly JobSummary[]; readonly olderThan: number | null };

/** One page of the jobs table, and where the next one starts. */
export async function listJobs(scope: TenantScope, query: JobListQuery): Promise<JobsPage> {
  const filter = {
    search: query.search,
    stage: query.stage,
    verdict: query.verdict,
    techId: query.tech,
    needsAttention: query.attention === "1",
  };
  const found = await jobs(scope).list(filter, { take: PAGE + 1, beforeNumber: query.before });
  const page = found.slice(0, PAGE);
  return { jobs: page, olderThan: found.length > PAGE ? (page.at(-1)?.number ?? null) : null };
}

/** The job, or the same "nothing here" for an id that does not exist, is another company's or is not assigned. */
export async function getJob(scope: TenantScope, id: string): Promise<Job> {
  const job = isUuid(id) ? await jobs(scope).find(asId<"job">(id)) : null;
  if (!job) throw notFound();
  return job;
}
