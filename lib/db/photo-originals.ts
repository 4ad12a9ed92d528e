import type { JobFile, OriginalWish } from "@/lib/domain/field-bundle";
import type { TenantScope } from "@/lib/domain/scope";
import { notFound } from "@/lib/errors";
import { appendActivity } from "./activity";
import { visibleJobs } from "./visibility";
import { type TenantTransaction, withTenant } from "./with-tenant";

export type OriginalBytes = { readonly sha256: string; readonly mime: string; readonly sizeBytes: number };

/** The cameras' own pictures, of which the phones sent small copies. */
export function photoOriginals(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  const note = (tx: TenantTransaction, action: string, jobId: string, photoId: string) =>
    appendActivity(tx, scope, { action, entity: "attachment", entityId: photoId, jobId });
  return {
    /** Asks for one original. Asked twice, or for what has come or is gone, nothing changes. */
    ask: (jobId: string, photoId: string): Promise<void> =>
      withTenant(scope, async (tx) => {
        const where = {
          ...{ ...own, id: photoId, jobId, kind: "photo", removedAt: null, heldAt: null },
          job: visibleJobs(scope),
        };
        if ((await tx.attachment.count({ where })) === 0) throw notFound();
        const changed = await tx.attachment.updateMany({
          where: { ...where, originalState: null },
          data: { originalState: "asked" },
        });
        if (changed.count > 0) await note(tx, "original photo asked for", jobId, photoId);
      }),

    /** Keeps what arrived; its bytes are stored already and the caller has asked what the row says. */
    receive: (file: JobFile, jobId: string, { sha256, mime, sizeBytes }: OriginalBytes): Promise<void> =>
      withTenant(scope, async (tx) => {
        await tx.attachment.updateMany({
          where: { ...own, id: file.id, jobId, createdBy: scope.userId },
          data: {
            originalState: "received",
            originalSha256: sha256,
            originalMime: mime,
            originalSizeBytes: sizeBytes,
          },
        });
        await note(tx, "original photo received", jobId, file.id);
      }),

    /** Keeps that the phone cannot send what was asked for. Safe to repeat. */
    cannotCome: (jobId: string, photoId: string, why: "gone" | "too large"): Promise<void> =>
      withTenant(scope, async (tx) => {
        const where = { ...own, id: photoId, jobId, createdBy: scope.userId, job: visibleJobs(scope) };
        if ((await tx.attachment.count({ where })) === 0) throw notFound();
        const changed = await tx.attachment.updateMany({
          where: { ...where, originalState: "asked" },
          data: { originalState: why },
        });
        const words = why === "gone" ? "no longer on the phone" : "too large to send";
        if (changed.count > 0) await note(tx, `original photo ${words}`, jobId, photoId);
      }),

    /** What this person's phone is asked for: pictures they took, of jobs they may see. */
    asked: (): Promise<readonly OriginalWish[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.attachment.findMany({
          where: {
            ...{ ...own, createdBy: scope.userId, originalState: "asked", removedAt: null, heldAt: null },
            job: visibleJobs(scope),
          },
          orderBy: { createdAt: "asc" },
          select: { id: true, jobId: true, caption: true },
        });
        return rows.flatMap(({ id, jobId, caption }) =>
          jobId === null ? [] : [{ photoId: id, jobId, caption }],
        );
      }),

    /** Jobs with pictures of this person whose originals stay on the phone, at most the 500 newest. */
    keptOf: (now: Date): Promise<readonly string[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.job.findMany({
          where: {
            ...own,
            jobAssignments: { some: { userId: scope.userId } },
            attachments: { some: { createdBy: scope.userId, kind: "photo" } },
            stageRecords: { none: signedBefore(now) },
          },
          orderBy: { number: "desc" },
          take: 500,
          select: { id: true },
        });
        return rows.map((row) => row.id);
      }),
  };
}

/** Days after signing in which somebody may still want to look closer. */
const ORIGINALS_STAY_DAYS = 30;

function signedBefore(now: Date) {
  const before = new Date(now.getTime() - ORIGINALS_STAY_DAYS * 86_400_000);
  return { stage: "startup_record", state: "signed", signedAt: { lt: before } };
}
