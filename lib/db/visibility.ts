import type { TenantScope } from "@/lib/domain/scope";
import type { Prisma } from "./generated/client";

/** The jobs this person may know of: all of the company, or the assigned ones for a tech. */
export function visibleJobs(scope: TenantScope): Prisma.JobWhereInput {
  const own = { tenantId: scope.tenantId };
  return scope.role === "tech" ? { ...own, jobAssignments: { some: { userId: scope.userId } } } : own;
}
