import { asId, type JobId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { asDate, asDay } from "./json";
import { withTenant } from "./with-tenant";

export type DueReview = { readonly jobId: JobId; readonly jobNumber: number; readonly dueOn: string };

/** More than come due anywhere within a few days. */
const MOST = 5_000;

/** Open jobs whose humidity review came due between two days, both included, and is not signed. */
export function dueReviews(scope: TenantScope, from: string, to: string): Promise<readonly DueReview[]> {
  return withTenant(scope, async (tx) => {
    const rows = await tx.job.findMany({
      where: {
        tenantId: scope.tenantId,
        state: "open",
        reviewDue: { gte: asDate(from) ?? undefined, lte: asDate(to) ?? undefined },
        stageRecords: { none: { stage: "humidity_review", state: "signed" } },
      },
      orderBy: [{ reviewDue: "desc" }, { number: "asc" }],
      take: MOST,
      select: { id: true, number: true, reviewDue: true },
    });
    return rows.map((row) => ({
      jobId: asId<"job">(row.id),
      jobNumber: row.number,
      dueOn: asDay(row.reviewDue) ?? "",
    }));
  });
}
