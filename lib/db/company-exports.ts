import { asId, type Id } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { notFound } from "@/lib/errors";
import { appendActivity } from "./activity";
import { withTenant } from "./with-tenant";

export type CompanyExportId = Id<"company export">;

export type CompanyExport = {
  readonly id: CompanyExportId;
  readonly state: "waiting" | "done";
  readonly sha256: string | null;
  readonly sizeBytes: number | null;
  readonly finishedAt: string | null;
  readonly expiresAt: string | null;
  readonly createdAt: string;
  readonly createdByName: string;
};

/** Exports of everything a company has. */
export function companyExports(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  return {
    add: (): Promise<CompanyExportId> =>
      withTenant(scope, async (tx) => {
        const { id } = await tx.companyExport.create({
          data: { ...own, createdBy: scope.userId },
          select: { id: true },
        });
        await appendActivity(tx, scope, {
          action: "export of everything asked for",
          entity: "company export",
          entityId: id,
        });
        return asId<"company export">(id);
      }),

    finish: (
      id: CompanyExportId,
      file: { readonly sha256: string; readonly size: number },
      at: Date,
      expiresAt: Date,
    ) =>
      withTenant(scope, async (tx) => {
        await tx.companyExport.updateMany({
          where: { ...own, id },
          data: {
            state: "done",
            storageKey: file.sha256,
            sha256: file.sha256,
            sizeBytes: file.size,
            finishedAt: at,
            expiresAt,
          },
        });
      }),

    /** Those being made and those that can still be taken, newest first. */
    list: (at: Date): Promise<readonly CompanyExport[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.companyExport.findMany({
          where: { ...own, OR: [{ expiresAt: null }, { expiresAt: { gt: at } }] },
          orderBy: { createdAt: "desc" },
          take: 20,
          include: { createdByMember: { select: { name: true } } },
        });
        return rows.map((row) => ({
          id: asId<"company export">(row.id),
          state: row.state as CompanyExport["state"],
          sha256: row.sha256,
          sizeBytes: row.sizeBytes === null ? null : Number(row.sizeBytes),
          finishedAt: row.finishedAt?.toISOString() ?? null,
          expiresAt: row.expiresAt?.toISOString() ?? null,
          createdAt: row.createdAt.toISOString(),
          createdByName: row.createdByMember.name,
        }));
      }),

    /** The file of an export that can still be taken; the trail says who took it. */
    take: (id: string, at: Date): Promise<{ readonly sha256: string; readonly finishedAt: Date }> =>
      withTenant(scope, async (tx) => {
        const row = await tx.companyExport.findFirst({
          where: { ...own, id, state: "done", expiresAt: { gt: at } },
          select: { sha256: true, finishedAt: true },
        });
        if (!row?.sha256 || !row.finishedAt) throw notFound();
        await appendActivity(tx, scope, {
          action: "export of everything downloaded",
          entity: "company export",
          entityId: id,
        });
        return { sha256: row.sha256, finishedAt: row.finishedAt };
      }),

    /** Which files the exports have that have ended. */
    expired: (at: Date): Promise<readonly string[]> =>
      withTenant(scope, async (tx) => {
        const where = { ...own, expiresAt: { lte: at } };
        const rows = await tx.companyExport.findMany({ where, select: { sha256: true } });
        return rows.flatMap((row) => (row.sha256 ? [row.sha256] : []));
      }),

    /** Takes exports that have ended, whose files are gone, off the list. */
    removeExpired: (at: Date): Promise<void> =>
      withTenant(scope, async (tx) => {
        await tx.companyExport.deleteMany({ where: { ...own, expiresAt: { lte: at } } });
      }),
  };
}
