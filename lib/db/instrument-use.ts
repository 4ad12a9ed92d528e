import type { Correction, InstrumentUse } from "@/lib/domain/instrument-report";
import type { TenantScope } from "@/lib/domain/scope";
import { withTenant } from "./with-tenant";

/** What signed startups say about the instruments they were measured with. Days are those of the signature. */
export function instrumentUse(scope: TenantScope) {
  return {
    /** Startups per instrument, and those on which two ways of measuring disagree. */
    counted: (from: string): Promise<readonly InstrumentUse[]> =>
      withTenant(
        scope,
        (tx) => tx.$queryRaw<InstrumentUse[]>`
          SELECT used.instrument AS "instrumentId", count(DISTINCT record.id)::int AS startups,
            (count(DISTINCT record.id) FILTER (WHERE EXISTS (
              SELECT FROM jsonb_array_elements(record.findings) finding
              WHERE finding->>'ruleId' IN ('startup.energy-balance', 'startup.condensate')
                AND finding->>'verdict' = 'falls short')))::int AS odd
          FROM stage_record record
          CROSS JOIN LATERAL (VALUES (record.inputs->>'airTemperatureInstrumentId'),
            (record.inputs->>'airflowInstrumentId'), (record.inputs->>'staticInstrumentId'),
            (record.inputs->>'refrigerantInstrumentId'), (record.inputs->>'electricalInstrumentId'),
            (record.inputs->>'scaleInstrumentId')) used (instrument)
          WHERE record.tenant_id = ${scope.tenantId}::uuid AND record.stage = 'startup_record'
            AND record.state = 'signed' AND record.signed_at >= ${from}::date AND used.instrument IS NOT NULL
          GROUP BY used.instrument`,
      ),

    /** Thermostats checked with a trusted instrument, oldest first. */
    corrections: (from: string): Promise<readonly Correction[]> =>
      withTenant(
        scope,
        (tx) => tx.$queryRaw<Correction[]>`
          SELECT inputs->>'trustedInstrumentId' AS "instrumentId", signed_at::date::text AS on,
            (inputs->>'trustedReadsF')::float8 - (inputs->>'thermostatReadsF')::float8 AS "temperatureF",
            (inputs->>'trustedReadsRhPct')::float8 - (inputs->>'thermostatReadsRhPct')::float8 AS "humidityPct"
          FROM stage_record
          WHERE tenant_id = ${scope.tenantId}::uuid AND stage = 'startup_record' AND state = 'signed'
            AND signed_at >= ${from}::date AND inputs->>'trustedInstrumentId' IS NOT NULL
          ORDER BY signed_at`,
      ),
  };
}
