import type { FitPicture, LivedSummary } from "@/lib/domain/forecast-lived/kept";
import type { JobId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { appendActivity } from "./activity";
import { asJson } from "./json";
import { visibleJobs } from "./visibility";
import { withTenant } from "./with-tenant";

export type KeptLived = {
  readonly summary: LivedSummary;
  readonly inputsHash: string;
  readonly engineVersion: string;
  readonly heldAt: string;
  readonly heldByName: string;
};

export type NewLived = {
  readonly jobId: JobId;
  readonly importId: string;
  readonly weatherFileId: string;
  readonly inputsHash: string;
  readonly engineVersion: string;
  readonly summary: LivedSummary;
  readonly picture: FitPicture | null;
};

/** Forecasts held against logs, one a log. */
export function forecastsLived(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  const here = (importId: string) => ({ ...own, importId, job: visibleJobs(scope) });
  return {
    find: (importId: string): Promise<KeptLived | null> =>
      withTenant(scope, async (tx) => {
        const row = await tx.forecastLived.findFirst({
          where: here(importId),
          select: {
            summary: true,
            inputsHash: true,
            engineVersion: true,
            createdAt: true,
            createdByMember: { select: { name: true } },
          },
        });
        if (row === null) return null;
        return {
          // Written by `keep` from this type; JSON knows no other.
          summary: row.summary as unknown as LivedSummary,
          inputsHash: row.inputsHash,
          engineVersion: row.engineVersion,
          heldAt: row.createdAt.toISOString(),
          heldByName: row.createdByMember.name,
        };
      }),

    picture: (importId: string): Promise<FitPicture | null> =>
      withTenant(scope, async (tx) => {
        const row = await tx.forecastLived.findFirst({ where: here(importId), select: { details: true } });
        return (row?.details ?? null) as unknown as FitPicture | null;
      }),

    /** Keeps what was found in place of what was kept of this log. The caller holds the job's lock. */
    keep: ({ summary, picture, jobId, importId, ...facts }: NewLived): Promise<void> =>
      withTenant(scope, async (tx) => {
        await tx.forecastLived.deleteMany({ where: { ...own, importId } });
        const { id } = await tx.forecastLived.create({
          data: {
            ...own,
            jobId,
            importId,
            ...facts,
            summary: asJson(summary),
            details: asJson(picture),
            createdBy: scope.userId,
          },
          select: { id: true },
        });
        await appendActivity(tx, scope, {
          action: "forecast held against log",
          entity: "forecast",
          entityId: id,
          jobId,
          after: {
            livedHoursAboveLimit: Math.round(summary.lived.hoursAboveLimit),
            forecastHoursAboveLimit: Math.round(summary.forecast.hoursAboveLimit.central),
          },
        });
      }),
  };
}
