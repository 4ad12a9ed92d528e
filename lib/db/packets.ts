import { asId, type JobId, type PacketId } from "@/lib/domain/ids";
import type { NewPacket, Packet, PacketKind, PacketLanguage, PacketPaper } from "@/lib/domain/packets";
import type { TenantScope } from "@/lib/domain/scope";
import { appendActivity } from "./activity";
import { visibleJobs } from "./visibility";
import { withTenant } from "./with-tenant";

export function packets(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  return {
    /** Every packet made of a job, newest first. */
    list: (jobId: JobId): Promise<readonly Packet[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.packet.findMany({
          where: { ...own, jobId, job: visibleJobs(scope) },
          orderBy: [{ createdAt: "desc" }, { revision: "desc" }],
          include: { createdByMember: { select: { name: true } } },
        });
        return rows.map((row) => ({
          id: asId<"packet">(row.id),
          kind: row.kind as PacketKind,
          language: row.language as PacketLanguage,
          paper: row.paper as PacketPaper,
          revision: row.revision,
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

    add: (packet: NewPacket): Promise<PacketId> =>
      withTenant(scope, async (tx) => {
        const row = await tx.packet.create({
          data: { ...own, ...packet, storageKey: packet.sha256, createdBy: scope.userId },
          select: { id: true },
        });
        await appendActivity(tx, scope, {
          action: "packet made",
          entity: "packet",
          entityId: row.id,
          jobId: packet.jobId,
          after: {
            kind: packet.kind,
            language: packet.language,
            revision: packet.revision,
            sha256: packet.sha256,
          },
        });
        return asId<"packet">(row.id);
      }),
  };
}
