import { wishesEndedBefore } from "@/lib/domain/field-bundle";
import { asId, type JobId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { withTenant } from "./with-tenant";

/** Jobs a phone carries at most; the ones due first. */
export const MOST_FIELD_JOBS = 40;

export function fieldJobs(scope: TenantScope) {
  return {
    /**
     * Open jobs assigned to this person, whatever the role, while the startup is not signed and for a
     * week after: a phone shall not carry every house it ever saw.
     */
    ids: (): Promise<readonly JobId[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.job.findMany({
          where: {
            tenantId: scope.tenantId,
            state: "open",
            jobAssignments: { some: { userId: scope.userId } },
            stageRecords: {
              none: {
                stage: "startup_record",
                state: "signed",
                signedAt: { lt: new Date(Date.now() - 7 * 86_400_000) },
              },
            },
          },
          orderBy: [{ startupDue: { sort: "asc", nulls: "last" } }, { number: "asc" }],
          take: MOST_FIELD_JOBS,
          select: { id: true },
        });
        return rows.map((row) => asId<"job">(row.id));
      }),

    /**
     * What differs whenever anything a bundle of these jobs is made of differs: a text, and beside it the version of each
     * startup draft, which a phone is also told by the answer to its own upload. One statement, so that a phone with
     * nothing new to hear costs the server almost nothing.
     */
    fingerprint: (
      jobIds: readonly string[],
    ): Promise<{ readonly rest: string; readonly versions: readonly number[] }> =>
      withTenant(scope, async (tx) => {
        const { tenantId, userId } = scope;
        const ids = [...jobIds];
        const rows = await tx.$queryRaw<{ rest: string; versions: number[] | null }[]>`
          SELECT jsonb_build_array(
            (SELECT jsonb_agg(jsonb_build_array(j.id, j.version, j.state, h.version, c.version)
               ORDER BY j.id) FROM job j
               JOIN home h ON h.tenant_id = j.tenant_id AND h.id = j.home_id
               JOIN customer c ON c.tenant_id = j.tenant_id AND c.id = j.customer_id
               WHERE j.tenant_id = ${tenantId}::uuid AND j.id = ANY (${ids}::uuid[])),
            (SELECT jsonb_agg(jsonb_build_array(id, version, state) ORDER BY id) FROM stage_record
               WHERE tenant_id = ${tenantId}::uuid AND job_id = ANY (${ids}::uuid[]) AND state <> 'superseded'
                 AND (stage <> 'startup_record' OR state = 'signed')),
            (SELECT jsonb_agg(jsonb_build_array(id, version) ORDER BY id) FROM question
               WHERE tenant_id = ${tenantId}::uuid AND job_id = ANY (${ids}::uuid[]) AND closed_at IS NULL),
            (SELECT jsonb_agg(jsonb_build_array(id, original_state) ORDER BY id) FROM attachment
               WHERE tenant_id = ${tenantId}::uuid AND job_id = ANY (${ids}::uuid[]) AND removed_at IS NULL AND held_at IS NULL),
            (SELECT jsonb_agg(id ORDER BY id) FROM attachment
               WHERE tenant_id = ${tenantId}::uuid AND created_by = ${userId}::uuid AND original_state = 'asked'
                 AND coalesce(original_asked_at, created_at) >= ${wishesEndedBefore(new Date())}
                 AND removed_at IS NULL AND held_at IS NULL),
            (SELECT count(*) FROM job_assignment WHERE tenant_id = ${tenantId}::uuid AND user_id = ${userId}::uuid),
            (SELECT jsonb_agg(jsonb_build_array(id, summary) ORDER BY id) FROM log_import
               WHERE tenant_id = ${tenantId}::uuid AND job_id = ANY (${ids}::uuid[])),
            (SELECT jsonb_agg(jsonb_build_array(id, version, retired_at) ORDER BY id) FROM instrument WHERE tenant_id = ${tenantId}::uuid),
            (SELECT jsonb_agg(jsonb_build_array(id, version, retired_at) ORDER BY id) FROM control_model WHERE tenant_id = ${tenantId}::uuid),
            (SELECT jsonb_agg(jsonb_build_array(id, archived_at) ORDER BY id) FROM weather_file WHERE tenant_id = ${tenantId}::uuid),
            (SELECT max(revision) FROM rule_limits WHERE tenant_id = ${tenantId}::uuid),
            (SELECT version FROM brand WHERE tenant_id = ${tenantId}::uuid),
            (SELECT name || time_zone FROM tenant WHERE id = ${tenantId}::uuid),
            (SELECT jsonb_agg(jsonb_build_array(user_id, version, name) ORDER BY user_id) FROM membership WHERE tenant_id = ${tenantId}::uuid),
            ${userId}::text)::text AS rest,
            (SELECT array_agg(coalesce((SELECT max(version) FROM stage_record WHERE tenant_id = ${tenantId}::uuid
                 AND job_id = wanted.id AND stage = 'startup_record'), 0)::int ORDER BY place)
               FROM unnest(${ids}::uuid[]) WITH ORDINALITY AS wanted (id, place)) AS versions`;
        return { rest: rows[0]?.rest ?? "", versions: rows[0]?.versions ?? [] };
      }),
  };
}
