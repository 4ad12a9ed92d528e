import type { JobId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { Prisma } from "./generated/client";
import { holdJob } from "./stage-record-guards";
import { jobIsVisible } from "./visibility";
import { withTenant } from "./with-tenant";

export type Waiting = { readonly fields?: number | undefined; readonly photos?: number | undefined };

/** Contacts closer together than this are one: a phone that asks every few seconds shall not write each time. */
const FRESH_SECONDS = 30;

export function fieldContacts(scope: TenantScope) {
  return {
    /** Notes that this person's phone was in contact about these jobs, and what it says still waits on it. */
    note: (jobIds: readonly string[], waiting?: Waiting): Promise<void> =>
      withTenant(scope, async (tx) => {
        if (jobIds.length === 0) return;
        const fields = waiting?.fields ?? null;
        const photos = waiting?.photos ?? null;
        const stale =
          fields === null && photos === null
            ? Prisma.sql`WHERE field_contact.last_at < now() - make_interval(secs => ${FRESH_SECONDS})`
            : Prisma.empty;
        // Sorted, so that two requests of one phone cannot wait for each other in a circle.
        await tx.$executeRaw`
          INSERT INTO field_contact (tenant_id, job_id, user_id, waiting_fields, waiting_photos)
          SELECT ${scope.tenantId}::uuid, job_id, ${scope.userId}::uuid,
            coalesce(${fields}::int, 0), coalesce(${photos}::int, 0)
          FROM unnest(${[...jobIds].toSorted()}::uuid[]) AS job_id
          ON CONFLICT (tenant_id, job_id, user_id) DO UPDATE SET last_at = now(),
            waiting_fields = coalesce(${fields}::int, field_contact.waiting_fields),
            waiting_photos = coalesce(${photos}::int, field_contact.waiting_photos)
          ${stale}`;
      }),

    /**
     * Holds a job as `stageRecords.lock` does and notes the contact, in one statement.
     *
     * @throws AppError `NOT_FOUND` when the job is not this person's.
     */
    lockAndNote: (jobId: JobId, waiting?: Waiting): Promise<void> =>
      withTenant(scope, async (tx) => {
        const fields = waiting?.fields ?? null;
        const photos = waiting?.photos ?? null;
        await holdJob(
          tx,
          scope,
          jobId,
          () =>
            tx.$queryRaw<readonly unknown[]>`
            WITH locked AS (
              SELECT job.id FROM job WHERE ${jobIsVisible(scope)} AND job.id = ${jobId}::uuid FOR UPDATE OF job
            ), noted AS (
              INSERT INTO field_contact (tenant_id, job_id, user_id, waiting_fields, waiting_photos)
              SELECT ${scope.tenantId}::uuid, id, ${scope.userId}::uuid, coalesce(${fields}::int, 0), coalesce(${photos}::int, 0)
              FROM locked
              ON CONFLICT (tenant_id, job_id, user_id) DO UPDATE SET last_at = now(),
                waiting_fields = coalesce(${fields}::int, field_contact.waiting_fields),
                waiting_photos = coalesce(${photos}::int, field_contact.waiting_photos)
            )
            SELECT 1 FROM locked`,
        );
      }),

    /** Which of these jobs this person's phone has had. */
    had: (jobIds: readonly string[]): Promise<readonly string[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.fieldContact.findMany({
          where: { tenantId: scope.tenantId, userId: scope.userId, jobId: { in: [...jobIds] } },
          select: { jobId: true },
        });
        return rows.map((row) => row.jobId);
      }),
  };
}
