import type { Callback } from "@/lib/domain/callbacks";
import type { TenantScope } from "@/lib/domain/scope";
import { toCallback, WITH_JOB } from "./callback-row";
import { asDate } from "./json";
import { visibleJobs } from "./visibility";
import { withTenant } from "./with-tenant";

/** More than a mail can usefully list. */
const MOST = 200;

/** Callbacks whose next step was due before a day, the longest waiting first. */
export function overdueCallbacks(scope: TenantScope, today: string): Promise<readonly Callback[]> {
  return withTenant(scope, async (tx) => {
    const rows = await tx.callback.findMany({
      where: {
        tenantId: scope.tenantId,
        job: visibleJobs(scope),
        state: { in: ["open", "fixed"] },
        dueOn: { lt: asDate(today) ?? new Date(0) },
      },
      orderBy: [{ dueOn: "asc" }, { id: "asc" }],
      take: MOST,
      include: WITH_JOB,
    });
    return rows.map(toCallback);
  });
}
