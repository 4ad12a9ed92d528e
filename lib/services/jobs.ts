import { jobs } from "@/lib/db/jobs";
import { asId, isUuid, type JobId } from "@/lib/domain/ids";
import type { Job } from "@/lib/domain/jobs";
import type { TenantScope } from "@/lib/domain/scope";
import { notFound } from "@/lib/errors";
import type { CreateJobInput } from "@/lib/schemas/job";

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

/** The job, or the same "nothing here" for an id that does not exist, is another company's or is not assigned. */
export async function getJob(scope: TenantScope, id: string): Promise<Job> {
  const job = isUuid(id) ? await jobs(scope).find(asId<"job">(id)) : null;
  if (!job) throw notFound();
  return job;
}
