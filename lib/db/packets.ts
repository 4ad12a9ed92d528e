import { asId, type JobId, type PacketId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { appendActivity } from "./activity";
import { visibleJobs } from "./visibility";
import { withTenant } from "./with-tenant";

export type PacketKind = "homeowner" | "crew" | "file";

export type Packet = {
  readonly id: PacketId;
  readonly kind: PacketKind;
  readonly revision: number;
  readonly sha256: string;
  readonly sizeBytes: number;
  readonly pages: number;
  readonly createdAt: string;
  readonly createdByName: string;
};

export type NewPacket = {
  readonly jobId: JobId;
  readonly kind: PacketKind;
  readonly revision: number;
  readonly sha256: string;
  readonly inputsHash: string;
  readonly engineVersion: string;
  readonly sizeBytes: number;
  readonly pages: number;
};

export function packets(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  return {
    /** Every packet made of a job, newest first. */
    list: (jobId: JobId): Promise<readonly (Packet & { readonly inputsHash: string })[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.packet.findMany({
          where: { ...own, jobId, job: visibleJobs(scope) },
          orderBy: { createdAt: "desc" },
          include: { createdByMember: { select: { name: true } } },
        });
        return rows.map((row) => ({
          id: asId<"packet">(row.id),
          kind: row.kind as PacketKind,
          revision: row.revision,
          sha256: row.sha256,
          inputsHash: row.inputsHash,
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
          after: { kind: packet.kind, revision: packet.revision, sha256: packet.sha256 },
        });
        return asId<"packet">(row.id);
      }),
  };
}
