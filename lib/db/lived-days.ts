import type { JobId } from "@/lib/domain/ids";
import type { LivedDay } from "@/lib/domain/lived-days";
import type { TenantScope } from "@/lib/domain/scope";
import { asDate, asDay } from "./json";
import { unpacked } from "./log-day";
import { visibleJobs } from "./visibility";
import { withTenant } from "./with-tenant";

const MOST_DAYS = 400;

/** The logged days of a job from `from` to `to`, both included, oldest first; of several loggers the one used last. */
export function livedDays(
  scope: TenantScope,
  jobId: JobId,
  { from, to }: { readonly from: string; readonly to: string | null },
): Promise<readonly LivedDay[]> {
  return withTenant(scope, async (tx) => {
    const rows = await tx.logDay.findMany({
      where: {
        tenantId: scope.tenantId,
        jobId,
        job: visibleJobs(scope),
        day: {
          gte: asDate(from) ?? new Date(from),
          ...(to === null ? {} : { lte: asDate(to) ?? undefined }),
        },
      },
      orderBy: [{ day: "asc" }, { importId: "desc" }],
      distinct: ["day"],
      take: MOST_DAYS,
      select: {
        day: true,
        offsetMinutes: true,
        indoorRhPct: true,
        indoorDbF: true,
        outdoorDbF: true,
        outdoorRhPct: true,
      },
    });
    const channel = (bytes: Uint8Array | null) => (bytes === null ? null : unpacked(bytes));
    return rows.map((row) => ({
      day: asDay(row.day) ?? "",
      offsetMinutes: unpacked(row.offsetMinutes),
      indoorRhPct: channel(row.indoorRhPct),
      indoorDbF: channel(row.indoorDbF),
      outdoorDbF: channel(row.outdoorDbF),
      outdoorRhPct: channel(row.outdoorRhPct),
    }));
  });
}
