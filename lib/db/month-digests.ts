import type { KeptMonth, NewMonth } from "@/lib/domain/month-digest";
import type { PacketPaper } from "@/lib/domain/packets";
import type { TenantScope } from "@/lib/domain/scope";
import { appendActivity } from "./activity";
import { withTenant } from "./with-tenant";

/** The owner's digests of months as they were made. */
export function monthDigests(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  return {
    /** The newest first; of one month only where one is named. */
    list: (month?: string): Promise<readonly KeptMonth[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.monthDigest.findMany({
          where: { ...own, ...(month === undefined ? {} : { month }) },
          orderBy: [{ month: "desc" }, { revision: "desc" }],
          include: { createdByMember: { select: { name: true } } },
          take: MOST_SHOWN,
        });
        return rows.map((row) => ({
          id: row.id,
          month: row.month,
          revision: row.revision,
          paper: row.paper as PacketPaper,
          sha256: row.sha256,
          inputsHash: row.inputsHash,
          viewSha256: row.viewSha256,
          renderer: row.renderer,
          sizeBytes: row.sizeBytes,
          pages: row.pages,
          createdAt: row.createdAt.toISOString(),
          createdByName: row.createdByMember.name,
        }));
      }),

    /** Until the transaction's end nobody else makes a digest of this month. */
    lock: (month: string): Promise<void> =>
      withTenant(scope, async (tx) => {
        await tx.$queryRaw`SELECT pg_advisory_xact_lock(hashtextextended(${`month digest ${scope.tenantId} ${month}`}, 0))::text`;
      }),

    add: (digest: NewMonth): Promise<string> =>
      withTenant(scope, async (tx) => {
        const { id } = await tx.monthDigest.create({
          data: { ...own, ...digest, createdBy: scope.userId },
          select: { id: true },
        });
        const { month, revision, sha256 } = digest;
        await appendActivity(tx, scope, {
          action: "month digest made",
          entity: "month digest",
          entityId: id,
          after: { month, revision, sha256 },
        });
        return id;
      }),
  };
}

/** Ten years of months, each made a few times. */
const MOST_SHOWN = 500;
