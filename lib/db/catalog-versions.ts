import type { TenantScope } from "@/lib/domain/scope";
import { notFound } from "@/lib/errors";
import { appendActivity } from "./activity";
import { Prisma } from "./generated/client";
import { type TenantTransaction, withTenant } from "./with-tenant";

export type CatalogVersion = {
  readonly id: string;
  readonly version: number;
  readonly madeAt: string;
  readonly madeBy: string;
  readonly retired: boolean;
  /** Jobs whose record rests on this version. */
  readonly jobs: readonly { readonly id: string; readonly number: number }[];
};

/** What of the catalog is kept in versions, and which entry of which record rests on one. */
export const VERSIONED = {
  equipment: {
    table: Prisma.raw("equipment_model"),
    entity: "equipment model",
    stage: "equipment_selection",
    input: "equipmentModelId",
  },
  thermostat: {
    table: Prisma.raw("control_model"),
    entity: "control model",
    stage: "control_setup",
    input: "controlModelId",
  },
} as const;
export type VersionedKind = keyof typeof VERSIONED;

/** Versions of one model or thermostat, and taking them off the lists. Nothing is ever deleted: jobs rest on it. */
export function catalogVersions(scope: TenantScope, kind: VersionedKind) {
  const { table, entity, stage, input } = VERSIONED[kind];
  const note = (tx: TenantTransaction, what: string, entityId: string, reason?: string) =>
    appendActivity(tx, scope, {
      action: `${kind} ${what}`,
      entity,
      entityId,
      ...(reason === undefined ? {} : { reason }),
    });
  const familyOf = async (tx: TenantTransaction, id: string): Promise<string> => {
    const [row] = await tx.$queryRaw<readonly { familyId: string }[]>`
      SELECT family_id AS "familyId" FROM ${table} WHERE tenant_id = ${scope.tenantId}::uuid AND id = ${id}::uuid`;
    if (!row) throw notFound();
    return row.familyId;
  };
  return {
    /** Every version of what `id` is a version of, newest first, with the jobs that rest on each. */
    list: (id: string): Promise<readonly CatalogVersion[]> =>
      withTenant(scope, async (tx) => {
        const familyId = await familyOf(tx, id);
        const rows = await tx.$queryRaw<
          readonly (Omit<CatalogVersion, "jobs" | "madeAt"> & { madeAt: Date })[]
        >`
          SELECT model.id, model.version, model.created_at AS "madeAt", member.name AS "madeBy",
            model.retired_at IS NOT NULL AS retired
          FROM ${table} model
          JOIN membership member ON member.tenant_id = model.tenant_id AND member.user_id = model.created_by
          WHERE model.tenant_id = ${scope.tenantId}::uuid AND model.family_id = ${familyId}::uuid
          ORDER BY model.version DESC`;
        const used = await tx.$queryRaw<readonly { modelId: string; jobId: string; number: number }[]>`
          SELECT latest.model_id AS "modelId", job.id AS "jobId", job.number
          FROM (
            SELECT DISTINCT ON (job_id) job_id, inputs->>${input}::text AS model_id
            FROM stage_record
            WHERE tenant_id = ${scope.tenantId}::uuid AND stage = ${stage}
            ORDER BY job_id, revision DESC
          ) AS latest
          JOIN job ON job.tenant_id = ${scope.tenantId}::uuid AND job.id = latest.job_id
          WHERE latest.model_id = ANY(${rows.map((row) => row.id)})
          ORDER BY job.number`;
        return rows.map((row) => ({
          ...row,
          madeAt: row.madeAt.toISOString(),
          jobs: used
            .filter(({ modelId }) => modelId === row.id)
            .map(({ jobId, number }) => ({ id: jobId, number })),
        }));
      }),

    /** Takes every version of it off the lists. */
    retire: (id: string): Promise<void> =>
      withTenant(scope, async (tx) => {
        await tx.$executeRaw`
          UPDATE ${table} SET retired_at = ${new Date()}
          WHERE tenant_id = ${scope.tenantId}::uuid AND family_id = ${await familyOf(tx, id)}::uuid AND retired_at IS NULL`;
        await note(tx, "retired", id);
      }),

    /** Puts one version back on the lists, as the newest that can be chosen. */
    bringBack: (id: string): Promise<void> =>
      withTenant(scope, async (tx) => {
        const changed = await tx.$executeRaw`
          UPDATE ${table} SET retired_at = NULL WHERE tenant_id = ${scope.tenantId}::uuid AND id = ${id}::uuid`;
        if (changed === 0) throw notFound();
        await note(tx, "brought back", id);
      }),

    /** Takes one version off the lists, so that the one before it is the newest again. */
    takeBack: (id: string, reason: string): Promise<void> =>
      withTenant(scope, async (tx) => {
        const changed = await tx.$executeRaw`
          UPDATE ${table} SET retired_at = ${new Date()}
          WHERE tenant_id = ${scope.tenantId}::uuid AND id = ${id}::uuid AND retired_at IS NULL`;
        if (changed === 0) throw notFound();
        await note(tx, "version taken back", id, reason);
      }),
  };
}
