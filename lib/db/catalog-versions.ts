import { asId, type EquipmentModelId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { notFound } from "@/lib/errors";
import { appendActivity } from "./activity";
import { withTenant } from "./with-tenant";

export type ModelVersion = {
  readonly id: EquipmentModelId;
  readonly version: number;
  readonly madeAt: string;
  readonly madeBy: string;
  readonly retired: boolean;
  /** Jobs whose equipment selection rests on this version. */
  readonly jobs: readonly { readonly id: string; readonly number: number }[];
};

/** Versions of one model, and taking versions off the lists. Nothing is ever deleted: jobs rest on it. */
export function catalogVersions(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  return {
    /** Every version of a model's family, newest first, with the jobs that rest on each. */
    list: (familyId: string): Promise<readonly ModelVersion[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.equipmentModel.findMany({
          where: { ...own, familyId },
          orderBy: { version: "desc" },
          select: {
            id: true,
            version: true,
            createdAt: true,
            retiredAt: true,
            createdByMember: { select: { name: true } },
          },
        });
        const ids = rows.map(({ id }) => id);
        const used = await tx.$queryRaw<readonly { modelId: string; jobId: string; number: number }[]>`
          SELECT DISTINCT latest.model_id AS "modelId", job.id AS "jobId", job.number
          FROM (
            SELECT DISTINCT ON (job_id) job_id, inputs->>'equipmentModelId' AS model_id
            FROM stage_record
            WHERE tenant_id = ${scope.tenantId}::uuid AND stage = 'equipment_selection'
            ORDER BY job_id, revision DESC
          ) AS latest
          JOIN job ON job.tenant_id = ${scope.tenantId}::uuid AND job.id = latest.job_id
          WHERE latest.model_id = ANY(${ids})
          ORDER BY job.number`;
        return rows.map((row) => ({
          id: asId<"equipment model">(row.id),
          version: row.version,
          madeAt: row.createdAt.toISOString(),
          madeBy: row.createdByMember.name,
          retired: row.retiredAt !== null,
          jobs: used
            .filter(({ modelId }) => modelId === row.id)
            .map(({ jobId, number }) => ({ id: jobId, number })),
        }));
      }),

    /** Takes every version of the model off the lists. */
    retire: (familyId: string, named: EquipmentModelId): Promise<void> =>
      withTenant(scope, async (tx) => {
        await tx.equipmentModel.updateMany({
          where: { ...own, familyId, retiredAt: null },
          data: { retiredAt: new Date() },
        });
        await appendActivity(tx, scope, {
          action: "equipment retired",
          entity: "equipment model",
          entityId: named,
        });
      }),

    /** Puts one version back on the lists, as the newest that can be chosen. */
    bringBack: (id: EquipmentModelId): Promise<void> =>
      withTenant(scope, async (tx) => {
        const changed = await tx.equipmentModel.updateMany({
          where: { ...own, id },
          data: { retiredAt: null },
        });
        if (changed.count === 0) throw notFound();
        await appendActivity(tx, scope, {
          action: "equipment brought back",
          entity: "equipment model",
          entityId: id,
        });
      }),

    /** Takes one version off the lists, so that the one before it is the newest again. */
    takeBack: (id: EquipmentModelId, reason: string): Promise<void> =>
      withTenant(scope, async (tx) => {
        const changed = await tx.equipmentModel.updateMany({
          where: { ...own, id, retiredAt: null },
          data: { retiredAt: new Date() },
        });
        if (changed.count === 0) throw notFound();
        await appendActivity(tx, scope, {
          action: "equipment version taken back",
          entity: "equipment model",
          entityId: id,
          reason,
        });
      }),
  };
}
