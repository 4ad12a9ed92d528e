import { asId, type JobId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { AppError, invalidInput } from "@/lib/errors";
import { appendActivity } from "./activity";
import { asDate } from "./json";
import type { TenantTransaction } from "./with-tenant";

/** What opens a job. */
export type NewJob = {
  readonly title: string;
  readonly customer: { readonly name: string; readonly email: string; readonly phone: string };
  readonly home: {
    readonly addressLine: string;
    readonly city: string;
    readonly region: string;
    readonly postalCode: string;
    readonly elevationFt: number;
    readonly builder?: string;
  };
  readonly weatherFileId: string | null;
  readonly startupDue: string | null;
  readonly reviewDue: string | null;
  readonly techIds: readonly string[];
  readonly note: string;
};

/** Customer, home, job and assignments together, with the entry on the trail. */
export async function createJob(tx: TenantTransaction, scope: TenantScope, input: NewJob): Promise<JobId> {
  const own = { tenantId: scope.tenantId, createdBy: scope.userId, updatedBy: scope.userId };
  await assertActiveMembers(tx, scope, input.techIds);
  await assertWeatherFile(tx, scope, input.weatherFileId);
  const customer = await tx.customer.create({ data: { ...own, ...input.customer }, select: { id: true } });
  const home = await tx.home.create({
    data: { ...own, customerId: customer.id, ...input.home },
    select: { id: true },
  });
  const job = await tx.job.create({
    data: {
      ...own,
      customerId: customer.id,
      homeId: home.id,
      title: input.title,
      currentStage: "load_summary",
      weatherFileId: input.weatherFileId,
      startupDue: asDate(input.startupDue),
      reviewDue: asDate(input.reviewDue),
      note: input.note,
    },
    select: { id: true, number: true },
  });
  await assign(tx, scope, job.id, input.techIds);
  await appendActivity(tx, scope, {
    action: "job created",
    entity: "job",
    entityId: job.id,
    jobId: job.id,
    after: { ...input, number: job.number },
  });
  return asId<"job">(job.id);
}

/** Assigns people to a job. */
export async function assign(
  tx: TenantTransaction,
  scope: TenantScope,
  jobId: string,
  techIds: readonly string[],
): Promise<void> {
  if (techIds.length === 0) return;
  await tx.jobAssignment.createMany({
    data: [...new Set(techIds)].map((userId) => ({
      tenantId: scope.tenantId,
      jobId,
      userId,
      assignedBy: scope.userId,
    })),
  });
}

/** Refuses people who are not members of the company now. */
export async function assertActiveMembers(
  tx: TenantTransaction,
  scope: TenantScope,
  userIds: readonly string[],
): Promise<void> {
  const found = await tx.membership.count({
    where: { tenantId: scope.tenantId, userId: { in: [...userIds] }, removedAt: null },
  });
  if (found !== new Set(userIds).size) {
    throw new AppError(
      "INVALID_INPUT",
      "One of the assigned people is not a member of this company any more.",
      {
        fields: [{ field: "techIds", message: "Choose people from the list of members." }],
      },
    );
  }
}

/** Refuses a weather year that is not in the company's list. */
export async function assertWeatherFile(
  tx: TenantTransaction,
  scope: TenantScope,
  id: string | null,
): Promise<void> {
  if (id === null) return;
  const found = await tx.weatherFile.count({ where: { tenantId: scope.tenantId, id, archivedAt: null } });
  if (found === 0)
    throw invalidInput([{ field: "weatherFileId", message: "Choose a weather year from the list." }]);
}
