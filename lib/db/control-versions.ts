import { asId, type ControlModelId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { notFound } from "@/lib/errors";
import { appendActivity } from "./activity";
import { withTenant } from "./with-tenant";

export type ControlVersion = {
  readonly id: ControlModelId;
  readonly version: number;
  readonly madeAt: string;
  readonly madeBy: string;
  readonly retired: boolean;
  /** Jobs whose control setup rests on this version. */
  readonly jobs: readonly { readonly id: string; readonly number: number }[];
};

/** Versions of one thermostat, and putting a retired one back. Nothing is ever deleted: jobs rest on it. */
export function controlVersions(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  return {
    /** Every version of the thermostat that `id` is a version of, newest first; none when there is no such one. */
    list: (id: ControlModelId): Promise<readonly ControlVersion[]> =>
      withTenant(scope, async (tx) => {
        const named = await tx.controlModel.findFirst({ where: { ...own, id }, select: { familyId: true } });
        if (!named) return [];
        const rows = await tx.controlModel.findMany({
          where: { ...own, familyId: named.familyId },
          orderBy: { version: "desc" },
          select: {
            id: true,
            version: true,
            createdAt: true,
            retiredAt: true,
            createdByMember: { select: { name: true } },
          },
        });
        const used = await tx.$queryRaw<readonly { controlId: string; jobId: string; number: number }[]>`
          SELECT latest.control_id AS "controlId", job.id AS "jobId", job.number
          FROM (
            SELECT DISTINCT ON (job_id) job_id, inputs->>'controlModelId' AS control_id
            FROM stage_record
            WHERE tenant_id = ${scope.tenantId}::uuid AND stage = 'control_setup'
            ORDER BY job_id, revision DESC
          ) AS latest
          JOIN job ON job.tenant_id = ${scope.tenantId}::uuid AND job.id = latest.job_id
          WHERE latest.control_id = ANY(${rows.map((row) => row.id)})
          ORDER BY job.number`;
        return rows.map((row) => ({
          id: asId<"control model">(row.id),
          version: row.version,
          madeAt: row.createdAt.toISOString(),
          madeBy: row.createdByMember.name,
          retired: row.retiredAt !== null,
          jobs: used
            .filter(({ controlId }) => controlId === row.id)
            .map(({ jobId, number }) => ({ id: jobId, number })),
        }));
      }),

    /** Puts one version back on the lists, as the newest that can be chosen. */
    bringBack: (id: ControlModelId): Promise<void> =>
      withTenant(scope, async (tx) => {
        const changed = await tx.controlModel.updateMany({
          where: { ...own, id },
          data: { retiredAt: null },
        });
        if (changed.count === 0) throw notFound();
        await appendActivity(tx, scope, {
          action: "thermostat brought back",
          entity: "control model",
          entityId: id,
        });
      }),
  };
}
