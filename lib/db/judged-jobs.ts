import { asId, type JobId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { type JobDerived, rewriteDerived } from "./job-derived";
import { withTenant } from "./with-tenant";

/** The jobs that have records, and so verdicts, ledger lines and facts that follow from rules. */
export function judgedJobs(scope: TenantScope) {
  const judged = { tenantId: scope.tenantId };
  return {
    count: (): Promise<number> => withTenant(scope, (tx) => tx.jobFact.count({ where: judged })),

    /** Some ids after an id, in their order. */
    after: (id: string | null, take: number): Promise<readonly JobId[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.jobFact.findMany({
          where: { ...judged, ...(id === null ? {} : { jobId: { gt: id } }) },
          orderBy: { jobId: "asc" },
          take,
          select: { jobId: true },
        });
        return rows.map((row) => asId<"job">(row.jobId));
      }),

    /** True when some job was last judged by other rules than these. */
    anyOfAnotherEngine: (engineVersion: string): Promise<boolean> =>
      withTenant(scope, async (tx) => {
        const row = await tx.jobFact.findFirst({
          where: { ...judged, engineVersion: { not: engineVersion } },
          select: { jobId: true },
        });
        return row !== null;
      }),

    /** Writes what follows from the records. Nobody has touched the job: its time and author stay. */
    rewrite: (jobId: JobId, derived: JobDerived): Promise<void> =>
      withTenant(scope, async (tx) => {
        // Written back, because the client would otherwise set the time by itself.
        const { updatedAt } = await tx.job.findFirstOrThrow({
          where: { ...judged, id: jobId },
          select: { updatedAt: true },
        });
        await rewriteDerived(tx, scope, jobId, derived, { updatedAt });
      }),
  };
}
