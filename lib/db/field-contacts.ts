import type { TenantScope } from "@/lib/domain/scope";
import { Prisma } from "./generated/client";
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
