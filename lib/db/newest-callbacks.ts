import type { Callback } from "@/lib/domain/callbacks";
import type { JobId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { type CallbackFilter, toCallback, WITH_JOB } from "./callback-row";
import { visibleJobs } from "./visibility";
import { withTenant } from "./with-tenant";

type Wanted = Pick<CallbackFilter, "state"> & { readonly jobId: JobId | null };

/** Callbacks in the order they came in, the newest first, or those that came in before one of them. */
export function newestCallbacks(
  scope: TenantScope,
  { jobId, state }: Wanted,
  page: { readonly take: number; readonly before: string | null },
): Promise<readonly Callback[]> {
  return withTenant(scope, async (tx) => {
    const rows = await tx.callback.findMany({
      where: {
        tenantId: scope.tenantId,
        job: visibleJobs(scope),
        ...(jobId === null ? {} : { jobId }),
        ...(state === null ? {} : { state }),
        ...(page.before === null ? {} : { id: { lt: page.before } }),
      },
      orderBy: { id: "desc" },
      take: page.take,
      include: WITH_JOB,
    });
    return rows.map(toCallback);
  });
}
