import type { Job } from "@/lib/domain/jobs";
import type { TenantScope } from "@/lib/domain/scope";
import { AppError, notFound } from "@/lib/errors";
import { appendActivity } from "./activity";
import type { NewJob } from "./job-writes";
import { visibleJobs } from "./visibility";
import type { TenantTransaction } from "./with-tenant";

/** Who and where a job is, and what is noted of it. */
export type JobFacts = Pick<NewJob, "title" | "note" | "customer"> & {
  readonly home: Required<NewJob["home"]>;
};

/** Writes job, customer and home together, with what stood there before on the trail. Search and sorting follow by trigger. */
export async function correctJob(
  tx: TenantTransaction,
  scope: TenantScope,
  job: Job,
  expectedVersion: number,
  facts: JobFacts,
): Promise<void> {
  const { title, note, customer, home } = facts;
  const touched = { version: { increment: 1 }, updatedAt: new Date(), updatedBy: scope.userId };
  const own = { tenantId: scope.tenantId };
  // Before the job itself: its search text is written from these.
  const mine = await tx.job.findFirst({
    where: { AND: [visibleJobs(scope), { id: job.id }] },
    select: { version: true },
  });
  if (!mine) throw notFound();
  if (mine.version !== expectedVersion) throw changedMeanwhile();
  await tx.customer.updateMany({ where: { ...own, id: job.customer.id }, data: { ...customer, ...touched } });
  await tx.home.updateMany({ where: { ...own, id: job.home.id }, data: { ...home, ...touched } });
  const changed = await tx.job.updateMany({
    where: { AND: [visibleJobs(scope), { id: job.id, version: expectedVersion }] },
    data: { title, note, ...touched },
  });
  if (changed.count === 0) throw changedMeanwhile();
  await appendActivity(tx, scope, {
    action: "job corrected",
    entity: "job",
    entityId: job.id,
    jobId: job.id,
    before: factsOf(job),
    after: facts,
  });
}

function factsOf({ title, note, customer, home }: Job) {
  const { name, email, phone } = customer;
  const { addressLine, city, region, postalCode, elevationFt, builder } = home;
  return {
    title,
    note,
    customer: { name, email, phone },
    home: { addressLine, city, region, postalCode, elevationFt, builder },
  };
}

function changedMeanwhile(): AppError {
  return new AppError(
    "CONFLICT",
    "Someone else changed this job just now. What you typed is still here; open the job in another tab to see theirs.",
  );
}
