import type { JobId } from "@/lib/domain/ids";
import type { LivedDay } from "@/lib/domain/lived-days";
import type { TenantScope } from "@/lib/domain/scope";
import { asDay } from "./json";
import { unpacked } from "./log-day";
import { visibleJobs } from "./visibility";
import { withTenant } from "./with-tenant";

/**
 * The days a house's loggers told of, from `from` to `to`, both included, oldest first; of several loggers the one used
 * last. A weather station beside them is none.
 */
export function livedDays(
  scope: TenantScope,
  jobId: JobId,
  { from, to }: { readonly from: string; readonly to: string },
): Promise<readonly LivedDay[]> {
  return withTenant(scope, async (tx) => {
    const rows = await tx.logDay.findMany({
      where: {
        tenantId: scope.tenantId,
        jobId,
        job: visibleJobs(scope),
        day: { gte: new Date(`${from}T00:00:00Z`), lte: new Date(`${to}T00:00:00Z`) },
        indoorRhPct: { not: null },
      },
      orderBy: [{ day: "asc" }, { importId: "desc" }],
      distinct: ["day"],
      select: {
        day: true,
        indoorRhPct: true,
        indoorDbF: true,
        outdoorDbF: true,
        outdoorRhPct: true,
      },
    });
    const channel = (bytes: Uint8Array | null) => (bytes === null ? null : unpacked(bytes));
    return rows.map((row) => ({
      day: asDay(row.day) ?? "",
      indoorRhPct: channel(row.indoorRhPct),
      indoorDbF: channel(row.indoorDbF),
      outdoorDbF: channel(row.outdoorDbF),
      outdoorRhPct: channel(row.outdoorRhPct),
    }));
  });
}
