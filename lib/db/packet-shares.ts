import { asId, type JobId, type PacketId } from "@/lib/domain/ids";
import type { PacketShare } from "@/lib/domain/packets";
import type { TenantScope } from "@/lib/domain/scope";
import { notFound } from "@/lib/errors";
import { appendActivity } from "./activity";
import { visibleJobs } from "./visibility";
import { withTenant } from "./with-tenant";

export type NewShare = {
  /** Where the link follows from it; else the database makes one. */
  readonly id?: string;
  readonly jobId: JobId;
  readonly packetId: PacketId;
  readonly purpose: PacketShare["purpose"];
  readonly sentTo: string;
  readonly message: string;
  readonly sha256: string;
  readonly tokenHash: string;
  readonly expiresAt: Date;
};

/** The links to the packets of a company. Only the hash of a link's secret is kept. */
export function packetShares(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  return {
    /** Every link to a packet of a job, newest first. */
    list: (jobId: JobId): Promise<readonly PacketShare[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.packetShare.findMany({
          where: { ...own, packet: { jobId, job: visibleJobs(scope) } },
          orderBy: [{ createdAt: "desc" }, { id: "desc" }],
          include: { createdByMember: { select: { name: true } } },
        });
        const time = (date: Date | null) => date?.toISOString() ?? null;
        return rows.map((row) => ({
          id: row.id,
          packetId: asId<"packet">(row.packetId),
          purpose: row.purpose as PacketShare["purpose"],
          sentTo: row.sentTo,
          message: row.message,
          sendProblem: row.sendProblem,
          sha256: row.sha256,
          createdAt: row.createdAt.toISOString(),
          createdByName: row.createdByMember.name,
          sentAt: time(row.sentAt),
          expiresAt: row.expiresAt.toISOString(),
          revokedAt: time(row.revokedAt),
          firstOpenedAt: time(row.firstOpenedAt),
          lastOpenedAt: time(row.lastOpenedAt),
          openCount: row.openCount,
        }));
      }),

    add: ({ jobId, ...share }: NewShare): Promise<string> =>
      withTenant(scope, async (tx) => {
        const row = await tx.packetShare.create({
          data: { ...own, ...share, createdBy: scope.userId },
          select: { id: true },
        });
        await appendActivity(tx, scope, {
          action: share.purpose === "mail" ? "packet link made" : "packet code printed",
          entity: "packet share",
          entityId: row.id,
          jobId,
          after: { sentTo: share.sentTo, sha256: share.sha256, expiresAt: share.expiresAt.toISOString() },
        });
        return row.id;
      }),

    markSent: (id: string): Promise<void> =>
      withTenant(scope, async (tx) => {
        await tx.packetShare.updateMany({
          where: { ...own, id },
          data: { sentAt: new Date(), sendProblem: "" },
        });
      }),

    /** Keeps why a mail has not gone out. */
    noteProblem: (id: string, problem: string): Promise<void> =>
      withTenant(scope, async (tx) => {
        await tx.packetShare.updateMany({ where: { ...own, id }, data: { sendProblem: problem } });
      }),

    /** Ends a link at once. One that has ended already stays as it is. */
    revoke: (jobId: JobId, id: string): Promise<void> =>
      withTenant(scope, async (tx) => {
        const where = { ...own, id, packet: { jobId, job: visibleJobs(scope) } };
        const found = await tx.packetShare.findFirst({ where, select: { sentTo: true, revokedAt: true } });
        if (!found) throw notFound();
        if (found.revokedAt !== null) return;
        await tx.packetShare.updateMany({
          where: { ...own, id, revokedAt: null },
          data: { revokedAt: new Date() },
        });
        await appendActivity(tx, scope, {
          action: "packet link withdrawn",
          entity: "packet share",
          entityId: id,
          jobId,
          before: { sentTo: found.sentTo },
        });
      }),
  };
}
