import type { JobId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import type { StageRecordRow } from "./stage-record-row";
import { jobIsVisible } from "./visibility";
import type { TenantTransaction } from "./with-tenant";

/**
 * The latest revision of each stage of a job this person may know of. A statement of its own, because every reading of
 * every phone asks for it: the client would read all revisions and then their authors.
 */
export async function latestRows(
  tx: TenantTransaction,
  scope: TenantScope,
  jobId: JobId,
): Promise<readonly StageRecordRow[]> {
  const rows = await tx.$queryRaw<
    readonly (Omit<StageRecordRow, "updatedByMember"> & { readonly by: string })[]
  >`
    SELECT DISTINCT ON (record.stage) record.id, record.job_id AS "jobId", record.stage, record.revision,
      record.schema_version AS "schemaVersion", record.state, record.version, record.inputs, record.findings,
      record.verdict, record.engine_version AS "engineVersion", record.signed_at AS "signedAt",
      record.signature_name AS "signatureName", record.reopen_reason AS "reopenReason",
      record.updated_at AS "updatedAt", member.name AS by
    FROM stage_record record
    JOIN job ON job.tenant_id = record.tenant_id AND job.id = record.job_id
    JOIN membership member ON member.tenant_id = record.tenant_id AND member.user_id = record.updated_by
    WHERE ${jobIsVisible(scope)} AND record.tenant_id = ${scope.tenantId}::uuid AND record.job_id = ${jobId}::uuid
    ORDER BY record.stage, record.revision DESC`;
  return rows.map(({ by, ...row }) => ({ ...row, updatedByMember: { name: by } }));
}
