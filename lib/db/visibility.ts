import type { TenantScope } from "@/lib/domain/scope";
import { Prisma } from "./generated/client";

/** The jobs this person may know of: all of the company, or the assigned ones for a tech. */
export function visibleJobs(scope: TenantScope): Prisma.JobWhereInput {
  const own = { tenantId: scope.tenantId };
  return scope.role === "tech" ? { ...own, jobAssignments: { some: { userId: scope.userId } } } : own;
}

/** The same of a row of `job`, as a condition of a written statement. */
export function jobIsVisible(scope: TenantScope): Prisma.Sql {
  const own = Prisma.sql`job.tenant_id = ${scope.tenantId}::uuid`;
  if (scope.role !== "tech") return own;
  return Prisma.sql`${own} AND EXISTS (SELECT FROM job_assignment assigned
    WHERE assigned.tenant_id = job.tenant_id AND assigned.job_id = job.id
      AND assigned.user_id = ${scope.userId}::uuid)`;
}
