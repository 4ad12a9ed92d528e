import type { JobId } from "@/lib/domain/ids";
import type { Job } from "@/lib/domain/jobs";
import type { TenantScope } from "@/lib/domain/scope";
import { AppError, notFound } from "@/lib/errors";
import { appendActivity } from "./activity";
import { correctJob, type JobFacts } from "./correct-job";
import { findJob } from "./find-job";
import { assertActiveMembers, assertWeatherFile, assign, createJob, type NewJob } from "./job-writes";
import { asDate } from "./json";
import { visibleJobs } from "./visibility";
import { withTenant } from "./with-tenant";

export function jobs(scope: TenantScope) {
  return {
    create: (input: NewJob): Promise<JobId> => withTenant(scope, (tx) => createJob(tx, scope, input)),

    find: (id: JobId): Promise<Job | null> => withTenant(scope, (tx) => findJob(tx, scope, id)),

    correct: (job: Job, expectedVersion: number, facts: JobFacts): Promise<void> =>
      withTenant(scope, (tx) => correctJob(tx, scope, job, expectedVersion, facts)),

    /** Says where the home is and which weather year the job is held against. The file is one of the company's list. */
    setWeather: (
      job: Pick<Job, "id" | "weatherFileId" | "home">,
      chosen: Pick<Job, "weatherFileId"> & Pick<Job["home"], "latitude" | "longitude">,
    ): Promise<void> =>
      withTenant(scope, async (tx) => {
        const { weatherFileId, latitude, longitude } = chosen;
        await assertWeatherFile(tx, scope, weatherFileId === job.weatherFileId ? null : weatherFileId);
        const changed = await tx.job.updateMany({
          where: { AND: [visibleJobs(scope), { id: job.id }] },
          data: { weatherFileId, updatedAt: new Date(), updatedBy: scope.userId },
        });
        if (changed.count === 0) throw notFound();
        await tx.home.updateMany({
          where: { tenantId: scope.tenantId, id: job.home.id },
          data: { latitude, longitude },
        });
        const { latitude: north, longitude: east } = job.home;
        await appendActivity(tx, scope, {
          action: "job weather chosen",
          entity: "job",
          entityId: job.id,
          jobId: job.id,
          before: { weatherFileId: job.weatherFileId, latitude: north, longitude: east },
          after: chosen,
        });
      }),

    /** Sets who is assigned and when it is due. */
    schedule: (
      id: JobId,
      plan: {
        readonly techIds: readonly string[];
        readonly startupDue: string | null;
        readonly reviewDue: string | null;
        readonly expectedVersion: number;
      },
    ): Promise<void> =>
      withTenant(scope, async (tx) => {
        const changed = await tx.job.updateMany({
          where: { AND: [visibleJobs(scope), { id, version: plan.expectedVersion }] },
          data: {
            startupDue: asDate(plan.startupDue),
            reviewDue: asDate(plan.reviewDue),
            version: { increment: 1 },
            updatedAt: new Date(),
            updatedBy: scope.userId,
          },
        });
        if (changed.count === 0) {
          const there = await tx.job.findFirst({
            where: { AND: [visibleJobs(scope), { id }] },
            select: { id: true },
          });
          if (!there) throw notFound();
          throw new AppError(
            "CONFLICT",
            "Someone else changed this job just now. Reload to see it; then make your change again.",
          );
        }
        await assertActiveMembers(tx, scope, plan.techIds);
        await tx.jobAssignment.deleteMany({ where: { tenantId: scope.tenantId, jobId: id } });
        await assign(tx, scope, id, plan.techIds);
        await appendActivity(tx, scope, {
          action: "job scheduled",
          entity: "job",
          entityId: id,
          jobId: id,
          after: plan,
        });
      }),
  };
}
