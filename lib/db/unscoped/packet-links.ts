import { type PacketKind, type PacketLanguage, type PacketPaper, replacedBy } from "@/lib/domain/packets";
import { unscopedTransaction } from "./transaction";

export type LinkedPacket = {
  readonly kind: PacketKind;
  readonly language: PacketLanguage;
  readonly sha256: string;
  readonly sizeBytes: number;
  readonly pages: number;
  readonly revision: number;
  readonly createdAt: string;
  readonly companyName: string;
  readonly accentColor: string | null;
  readonly phone: string;
  readonly expiresAt: string;
  /** True when a newer packet of its kind has been made. */
  readonly isReplaced: boolean;
};

/** The packet that an open link of an open company names, or `null`. */
export function unscopedLinkedPacket(
  tenantId: string,
  tokenHash: string,
  now: Date,
): Promise<LinkedPacket | null> {
  return unscopedTransaction(async (tx) => {
    const share = await tx.packetShare.findFirst({
      where: { tenantId, tokenHash, revokedAt: null, expiresAt: { gt: now } },
      select: { packetId: true, expiresAt: true },
    });
    if (!share) return null;
    const tenant = await tx.tenant.findFirst({
      where: { id: tenantId, closedAt: null },
      select: { name: true },
    });
    const packet = await tx.packet.findFirst({ where: { tenantId, id: share.packetId } });
    if (!tenant || !packet) return null;
    const series = await tx.packet.findMany({
      where: { tenantId, jobId: packet.jobId, kind: packet.kind },
      select: { kind: true, language: true, paper: true, revision: true },
    });
    const brand = await tx.brand.findFirst({ where: { tenantId } });
    const typed = series.map((one) => ({
      ...one,
      kind: one.kind as PacketKind,
      language: one.language as PacketLanguage,
      paper: one.paper as PacketPaper,
    }));
    const { kind, language, paper, revision } = packet;
    const own = {
      kind: kind as PacketKind,
      language: language as PacketLanguage,
      paper: paper as PacketPaper,
      revision,
    };
    return {
      kind: own.kind,
      language: own.language,
      revision,
      sha256: packet.sha256,
      sizeBytes: packet.sizeBytes,
      pages: packet.pages,
      createdAt: packet.createdAt.toISOString(),
      companyName: brand?.displayName ?? tenant.name,
      accentColor: brand?.accentColor ?? null,
      phone: brand?.phone ?? "",
      expiresAt: share.expiresAt.toISOString(),
      isReplaced: replacedBy(own, typed) !== null,
    };
  });
}

/** Notes that somebody opened the file behind a link. */
export function unscopedNoteOpened(tenantId: string, tokenHash: string, now: Date): Promise<void> {
  return unscopedTransaction(async (tx) => {
    await tx.packetShare.updateMany({
      where: { tenantId, tokenHash },
      data: { lastOpenedAt: now, openCount: { increment: 1 } },
    });
    await tx.packetShare.updateMany({
      where: { tenantId, tokenHash, firstOpenedAt: null },
      data: { firstOpenedAt: now },
    });
  });
}
