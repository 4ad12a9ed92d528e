import type { TenantScope } from "@/lib/domain/scope";
import { withTenant } from "./with-tenant";

export type RetiredKind = "equipment" | "thermostat" | "instrument";

/** One entry off the lists; a model by the version that was last on them. */
export type Retired = {
  readonly kind: RetiredKind;
  readonly id: string;
  readonly name: string;
  /** Day, such as `2026-07-31`. */
  readonly retiredOn: string;
};

/** What the company has taken off the lists of its catalog, whole families only: a version that was followed or taken back is none. */
export function retiredOf(scope: TenantScope): Promise<readonly Retired[]> {
  return withTenant(
    scope,
    (tx) => tx.$queryRaw<Retired[]>`
      SELECT kind, id, name, to_char(retired_at, 'YYYY-MM-DD') AS "retiredOn" FROM (
        (SELECT DISTINCT ON (family_id) 'equipment' AS kind, id, maker || ' ' || name AS name, retired_at
          FROM equipment_model WHERE tenant_id = ${scope.tenantId}::uuid
          ORDER BY family_id, retired_at DESC NULLS FIRST, version DESC)
        UNION ALL
        (SELECT DISTINCT ON (family_id) 'thermostat', id, maker || ' ' || name, retired_at
          FROM control_model WHERE tenant_id = ${scope.tenantId}::uuid
          ORDER BY family_id, retired_at DESC NULLS FIRST, version DESC)
        UNION ALL
        SELECT 'instrument', id, name, retired_at FROM instrument WHERE tenant_id = ${scope.tenantId}::uuid
      ) AS newest
      WHERE retired_at IS NOT NULL
      ORDER BY kind, name, id`,
  );
}
