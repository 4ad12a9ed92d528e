import type { TenantScope } from "@/lib/domain/scope";
import { THERMOSTAT_DRIFT, type ThermostatDrift } from "@/lib/domain/thermostat-drift";
import { withTenant } from "./with-tenant";

const MOST = 100;

/**
 * Thermostats whose correction moved: of one home, of one model, over the signed revisions of control setups and startups since a
 * day. The most moved first, at most a hundred.
 */
export function thermostatDrift(scope: TenantScope, from: string): Promise<readonly ThermostatDrift[]> {
  const { leastF, leastRhPct, leastDays } = THERMOSTAT_DRIFT;
  return withTenant(
    scope,
    (tx) => tx.$queryRaw<ThermostatDrift[]>`
      WITH set_to AS (
        SELECT job.home_id, job.id AS job_id, job.number, record.signed_at, control.inputs->>'controlModelId' AS model,
          CASE record.stage WHEN 'control_setup' THEN (record.inputs->>'indoorTemperatureCorrectionF')::float8
            ELSE (record.inputs->>'leftTemperatureCorrectionF')::float8 END AS f,
          CASE record.stage WHEN 'control_setup' THEN (record.inputs->>'indoorHumidityCorrectionPct')::float8
            ELSE (record.inputs->>'leftHumidityCorrectionPct')::float8 END AS pct
        FROM stage_record record
        JOIN job ON job.tenant_id = record.tenant_id AND job.id = record.job_id
        JOIN stage_record control ON control.tenant_id = record.tenant_id AND control.job_id = record.job_id
          AND control.stage = 'control_setup' AND control.state = 'signed'
        WHERE record.tenant_id = ${scope.tenantId}::uuid AND record.stage IN ('control_setup', 'startup_record')
          AND record.signed_at >= ${from}::date
      ), moved AS (
        SELECT home_id, count(*)::int AS checks, min(signed_at)::date AS first_on, max(signed_at)::date AS last_on,
          (array_agg(job_id ORDER BY signed_at DESC))[1] AS job_id,
          (array_agg(f ORDER BY signed_at DESC) FILTER (WHERE f IS NOT NULL))[1]
            - (array_agg(f ORDER BY signed_at) FILTER (WHERE f IS NOT NULL))[1] AS f,
          (array_agg(pct ORDER BY signed_at DESC) FILTER (WHERE pct IS NOT NULL))[1]
            - (array_agg(pct ORDER BY signed_at) FILTER (WHERE pct IS NOT NULL))[1] AS pct
        FROM set_to WHERE model IS NOT NULL GROUP BY home_id, model HAVING count(*) > 1
      )
      SELECT moved.job_id AS "jobId", job.number AS "jobNumber", customer.name AS "customerName", checks,
        first_on::text AS "firstOn", last_on::text AS "lastOn", f AS "changeF", pct AS "changeRhPct"
      FROM moved
      JOIN job ON job.tenant_id = ${scope.tenantId}::uuid AND job.id = moved.job_id
      JOIN customer ON customer.tenant_id = job.tenant_id AND customer.id = job.customer_id
      WHERE last_on - first_on >= ${leastDays} AND (abs(f) >= ${leastF} OR abs(pct) >= ${leastRhPct})
      ORDER BY greatest(abs(f) / ${leastF}, abs(pct) / ${leastRhPct}) DESC, job.number LIMIT ${MOST}`,
  );
}
