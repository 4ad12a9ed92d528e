import { type JobFile, type OriginalWish, wishesEndedBefore } from "@/lib/domain/field-bundle";
import type { TenantScope } from "@/lib/domain/scope";
import { notFound } from "@/lib/errors";
import { appendActivity } from "./activity";
import { visibleJobs } from "./visibility";
import { type TenantTransaction, withTenant } from "./with-tenant";

export type OriginalBytes = { readonly sha256: string; readonly mime: string; readonly sizeBytes: number };

/** Whose phone holds originals of a job: the office asks nobody but them. */
export type PhotoTaker = {
  readonly userId: string;
  /** False after leaving the company: the phone erases what it holds at its next contact. */
  readonly isHere: boolean;
  /** False after being unassigned: the phone does not hear of wishes any more. */
  readonly isOnJob: boolean;
  /** Their phone's last contact about this job. */
  readonly lastContact: string | null;
};

/** The cameras' own pictures, of which the phones sent small copies. */
export function photoOriginals(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  const note = (tx: TenantTransaction, action: string, jobId: string, photoId: string) =>
    appendActivity(tx, scope, { action, entity: "attachment", entityId: photoId, jobId });
  const ofPhoto = (jobId: string, photoId: string) => ({
    ...{ ...own, id: photoId, jobId, kind: "photo", removedAt: null, heldAt: null },
    job: visibleJobs(scope),
  });
  return {
    /** Asks for one original. While a wish waits, or for what has come or is gone, nothing changes. */
    ask: (jobId: string, photoId: string, now: Date): Promise<void> =>
      withTenant(scope, async (tx) => {
        const where = ofPhoto(jobId, photoId);
        if ((await tx.attachment.count({ where })) === 0) throw notFound();
        const changed = await tx.attachment.updateMany({
          where: {
            ...where,
            OR: [{ originalState: null }, { originalState: "asked", NOT: stillWaits(now) }],
          },
          data: { originalState: "asked", originalAskedAt: now },
        });
        if (changed.count > 0) await note(tx, "original photo asked for", jobId, photoId);
      }),

    /** Takes a wish back. What has come stays; where nothing is asked for nothing changes. */
    withdraw: (jobId: string, photoId: string): Promise<void> =>
      withTenant(scope, async (tx) => {
        const where = ofPhoto(jobId, photoId);
        if ((await tx.attachment.count({ where })) === 0) throw notFound();
        const changed = await tx.attachment.updateMany({
          where: { ...where, originalState: "asked" },
          data: { originalState: null, originalAskedAt: null },
        });
        if (changed.count > 0) await note(tx, "original photo no longer asked for", jobId, photoId);
      }),

    /** Who took the pictures of a job, and whether their phones can still be asked. */
    takers: (jobId: string): Promise<readonly PhotoTaker[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.membership.findMany({
          where: { ...own, attachments: { some: { ...own, jobId, kind: "photo", job: visibleJobs(scope) } } },
          select: {
            userId: true,
            removedAt: true,
            jobAssignmentsAsMember: { where: { jobId }, select: { jobId: true } },
            fieldContacts: { where: { jobId }, select: { lastAt: true } },
          },
        });
        return rows.map(({ userId, removedAt, jobAssignmentsAsMember, fieldContacts }) => ({
          userId,
          isHere: removedAt === null,
          isOnJob: jobAssignmentsAsMember.length > 0,
          lastContact: fieldContacts[0]?.lastAt.toISOString() ?? null,
        }));
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
    asked: (now: Date): Promise<readonly OriginalWish[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.attachment.findMany({
          where: {
            ...{ ...own, createdBy: scope.userId, originalState: "asked", removedAt: null, heldAt: null },
            ...stillWaits(now),
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

/** The first wishes were kept without their time: they are as old as the picture at most. */
function stillWaits(now: Date) {
  const since = { gte: wishesEndedBefore(now) };
  return { OR: [{ originalAskedAt: since }, { originalAskedAt: null, createdAt: since }] };
}

/** Days after signing in which somebody may still want to look closer. */
const ORIGINALS_STAY_DAYS = 30;

function signedBefore(now: Date) {
  const before = new Date(now.getTime() - ORIGINALS_STAY_DAYS * 86_400_000);
  return { stage: "startup_record", state: "signed", signedAt: { lt: before } };
}
