import type { TenantScope } from "@/lib/domain/scope";
import type { TenantTransaction } from "./with-tenant";

/**
 * Copies what the facts of a job take from other rows: its callbacks, who signed its startup and when, and who
 * built the house.
 * Runs in the transaction that changes them; nothing happens while the job has no facts yet.
 */
export async function countCallbacks(
  tx: TenantTransaction,
  scope: TenantScope,
  jobId: string,
): Promise<void> {
  await tx.$executeRaw`
    UPDATE job_fact SET
      (callback_count, open_callback_count, humidity_complaint_count) = (
        SELECT count(*), count(*) FILTER (WHERE state = 'open'), count(*) FILTER (WHERE humidity_complaint)
        FROM callback WHERE tenant_id = ${scope.tenantId}::uuid AND job_id = ${jobId}::uuid),
      (startup_signed_on, startup_month, tech_id) = (
        SELECT max(signed_at)::date, extract(month FROM max(signed_at))::int,
          (array_agg(signed_by ORDER BY revision DESC))[1]
        FROM stage_record
        WHERE tenant_id = ${scope.tenantId}::uuid AND job_id = ${jobId}::uuid
          AND stage = 'startup_record' AND state = 'signed'),
      builder = (
        SELECT home.builder FROM job JOIN home ON home.tenant_id = job.tenant_id AND home.id = job.home_id
        WHERE job.tenant_id = ${scope.tenantId}::uuid AND job.id = ${jobId}::uuid)
    WHERE tenant_id = ${scope.tenantId}::uuid AND job_id = ${jobId}::uuid`;
}
