// Longer than usual because reading, keeping and deciding share one column list.
import { type JobFile, type OriginalState, wishesEndedBefore } from "@/lib/domain/field-bundle";
import type { TenantScope } from "@/lib/domain/scope";
import type { StageKey } from "@/lib/domain/stages";
import { notFound } from "@/lib/errors";
import { appendActivity } from "./activity";
import type { Prisma } from "./generated/client";
import { visibleJobs } from "./visibility";
import { type TenantTransaction, withTenant } from "./with-tenant";

/** A file with its bytes stored already. */
export type NewAttachment = {
  readonly id: string;
  readonly jobId: string;
  readonly kind: JobFile["kind"];
  readonly stage: StageKey | null;
  readonly fieldPath: string | null;
  readonly fileName: string;
  readonly mime: string;
  readonly sizeBytes: number;
  readonly sha256: string;
  readonly fullSha256: string | null;
  readonly smallSha256: string | null;
  readonly widthPx: number | null;
  readonly heightPx: number | null;
  readonly caption: string;
  readonly takenAt: string | null;
  readonly latitude: number | null;
  readonly longitude: number | null;
  /** True when it waits for the office, because its sender may not see the job any more. */
  readonly isHeld: boolean;
};

const FIELDS = {
  id: true,
  jobId: true,
  kind: true,
  stage: true,
  fieldPath: true,
  fileName: true,
  caption: true,
  mime: true,
  sizeBytes: true,
  sha256: true,
  fullSha256: true,
  smallSha256: true,
  widthPx: true,
  heightPx: true,
  takenAt: true,
  createdAt: true,
  createdBy: true,
  removedAt: true,
  heldAt: true,
  originalState: true,
  originalAskedAt: true,
  originalSha256: true,
  originalMime: true,
  createdByMember: { select: { name: true } },
} as const satisfies Prisma.AttachmentSelect;
type Row = Prisma.AttachmentGetPayload<{ select: typeof FIELDS }>;

export type StoredAttachment = JobFile & {
  readonly jobId: string | null;
  readonly fullSha256: string | null;
  readonly smallSha256: string | null;
  readonly originalSha256: string | null;
  readonly originalMime: string | null;
  readonly isRemoved: boolean;
  readonly isHeld: boolean;
};

export function attachments(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  return {
    /** Files of these jobs that are neither removed nor waiting for the office, oldest first. */
    list: (jobIds: readonly string[]): Promise<readonly (JobFile & { readonly jobId: string | null })[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.attachment.findMany({
          where: {
            ...own,
            jobId: { in: [...jobIds] },
            removedAt: null,
            heldAt: null,
            job: visibleJobs(scope),
          },
          orderBy: [{ createdAt: "asc" }, { id: "asc" }],
          select: FIELDS,
        });
        return rows.map((row) => ({ ...toFile(row), jobId: row.jobId }));
      }),

    /** Pictures of a job that wait for the office, oldest first. */
    held: (jobId: string): Promise<readonly JobFile[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.attachment.findMany({
          where: { ...own, jobId, removedAt: null, heldAt: { not: null }, job: visibleJobs(scope) },
          orderBy: { createdAt: "asc" },
          select: FIELDS,
        });
        return rows.map(toFile);
      }),

    /** One file of a job, removed ones too; `null` when it is not there or not this person's to see. */
    find: (jobId: string, id: string): Promise<StoredAttachment | null> =>
      withTenant(scope, async (tx) => {
        const seen = scope.role === "tech" ? { heldAt: null } : {};
        const row = await tx.attachment.findFirst({
          where: { ...own, ...seen, id, jobId, job: visibleJobs(scope) },
          select: FIELDS,
        });
        return row ? toStored(row) : null;
      }),

    /**
     * Holds other uploads of the same id or the same bytes until this transaction ends, and answers what
     * the id names already, in any job.
     */
    claim: (id: string, sha256: string): Promise<StoredAttachment | null> =>
      withTenant(scope, async (tx) => {
        for (const name of [id, sha256]) await hold(tx, scope, name);
        const row = await tx.attachment.findFirst({ where: { ...own, id }, select: FIELDS });
        return row ? toStored(row) : null;
      }),

    add: (file: NewAttachment): Promise<JobFile> =>
      withTenant(scope, async (tx) => {
        const { takenAt, isHeld, ...rest } = file;
        const row = await tx.attachment.create({
          data: {
            ...own,
            ...rest,
            clientId: file.id,
            storageKey: file.sha256,
            takenAt: takenAt === null ? null : new Date(takenAt),
            heldAt: isHeld ? new Date() : null,
            createdBy: scope.userId,
          },
          select: FIELDS,
        });
        await appendActivity(tx, scope, {
          action: isHeld ? `${file.kind} kept for the office` : `${file.kind} added`,
          entity: "attachment",
          entityId: file.id,
          jobId: file.jobId,
          after: { fileName: file.fileName, field: file.fieldPath, caption: file.caption },
        });
        return toFile(row);
      }),

    /** Takes a file out of sight; its row and its bytes stay for the trail. */
    remove: (jobId: string, id: string): Promise<void> =>
      withTenant(scope, async (tx) => {
        const changed = await tx.attachment.updateMany({
          where: { ...own, id, jobId, removedAt: null },
          data: { removedAt: new Date() },
        });
        if (changed.count === 0) return;
        const row = await tx.attachment.findFirst({ where: { ...own, id }, select: FIELDS });
        await appendActivity(tx, scope, {
          action: `${row?.kind ?? "file"} removed`,
          entity: "attachment",
          entityId: id,
          jobId,
          before: { fileName: row?.fileName, field: row?.fieldPath, caption: row?.caption },
        });
      }),

    /** Takes a picture that waited into the job, or out of sight. */
    decide: (jobId: string, id: string, take: boolean): Promise<void> =>
      withTenant(scope, async (tx) => {
        const changed = await tx.attachment.updateMany({
          where: { ...own, id, jobId, heldAt: { not: null }, removedAt: null, job: visibleJobs(scope) },
          data: take ? { heldAt: null } : { removedAt: new Date() },
        });
        if (changed.count === 0) throw notFound();
        await appendActivity(tx, scope, {
          action: take ? "late photo taken" : "late photo discarded",
          entity: "attachment",
          entityId: id,
          jobId,
        });
      }),

    /** How many pictures of one sender wait for the office. */
    heldCount: (): Promise<number> =>
      withTenant(scope, (tx) =>
        tx.attachment.count({
          where: { ...own, createdBy: scope.userId, heldAt: { not: null }, removedAt: null },
        }),
      ),

    /** Runs `remove` when no row of the company stands on these bytes, and none can come to while it runs. */
    ifUnused: (sha256: string, remove: () => Promise<void>): Promise<void> =>
      withTenant(scope, async (tx) => {
        await hold(tx, scope, sha256);
        if (!(await isUsed(tx, scope, sha256))) await remove();
      }),
  };
}

async function hold(tx: TenantTransaction, scope: TenantScope, name: string): Promise<void> {
  await tx.$queryRaw`SELECT pg_advisory_xact_lock(hashtextextended(${`${scope.tenantId} ${name}`}, 7))::text`;
}

async function isUsed(tx: TenantTransaction, scope: TenantScope, sha256: string): Promise<boolean> {
  const found = await tx.attachment.findFirst({
    where: {
      tenantId: scope.tenantId,
      OR: [{ sha256 }, { fullSha256: sha256 }, { smallSha256: sha256 }, { originalSha256: sha256 }],
    },
    select: { id: true },
  });
  return found !== null;
}

function toStored(row: Row): StoredAttachment {
  return {
    ...toFile(row),
    jobId: row.jobId,
    fullSha256: row.fullSha256,
    smallSha256: row.smallSha256,
    originalSha256: row.originalSha256,
    originalMime: row.originalMime,
    isRemoved: row.removedAt !== null,
    isHeld: row.heldAt !== null,
  };
}

function toFile(row: Row): JobFile {
  return {
    id: row.id,
    kind: row.kind as JobFile["kind"],
    stage: row.stage as StageKey | null,
    fieldPath: row.fieldPath,
    fileName: row.fileName,
    caption: row.caption,
    mime: row.mime,
    sizeBytes: row.sizeBytes,
    sha256: row.sha256,
    widthPx: row.widthPx,
    heightPx: row.heightPx,
    takenAt: row.takenAt?.toISOString() ?? null,
    addedAt: row.createdAt.toISOString(),
    addedByName: row.createdByMember.name,
    addedById: row.createdBy,
    original: originalOf(row),
    originalAskedAt: row.originalState === null ? null : askedAt(row).toISOString(),
  };
}

/** The row says `asked` until something comes; whether anybody still waits is a matter of time. */
function originalOf(row: Row): OriginalState | null {
  const hasEnded = row.originalState === "asked" && askedAt(row) < wishesEndedBefore(new Date());
  return hasEnded ? "ended" : (row.originalState as OriginalState | null);
}

/** The first wishes were kept without their time: they are as old as the picture at most. */
function askedAt({ originalAskedAt, createdAt }: Row): Date {
  return originalAskedAt ?? createdAt;
}
