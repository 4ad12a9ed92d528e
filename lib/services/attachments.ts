import { attachments, type NewAttachment, type StoredAttachment } from "@/lib/db/attachments";
import { fieldContacts } from "@/lib/db/field-contacts";
import { withTenant } from "@/lib/db/with-tenant";
import type { JobFile } from "@/lib/domain/field-bundle";
import { asId, isUuid } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { STAGE_FIELDS, type StageKey } from "@/lib/domain/stages";
import { AppError, invalidInput, notFound } from "@/lib/errors";
import { shownPicture } from "@/lib/files/shown-picture";
import { sniffAllowed } from "@/lib/files/sniff";
import { deleteStoredFile, isStored, readStoredFile, sha256Of, storeFile } from "@/lib/files/store";
import type { PhotoDetails, PhotoSize } from "@/lib/schemas/field";
import { getJob } from "./jobs";

export type NewFile = {
  readonly jobId: string;
  /** Made by the sender: the same id with the same bytes is kept once, however often it arrives. */
  readonly id: string;
  readonly kind: JobFile["kind"];
  readonly stage: StageKey | null;
  readonly fileName: string;
  readonly bytes: Uint8Array;
  readonly details: PhotoDetails;
};

/** Keeps a file of a job. When this returns, row and bytes survive a power failure; when it throws, neither is there. */
export async function addFile(scope: TenantScope, file: NewFile): Promise<JobFile> {
  await getJob(scope, file.jobId);
  return keepFile(scope, file, false);
}

/** Keeps a file apart for the office, of a sender who may not see the job any more. The caller has asked whether they may. */
export function holdFile(scope: TenantScope, file: NewFile): Promise<JobFile> {
  return keepFile(scope, file, true);
}

async function keepFile(scope: TenantScope, file: NewFile, isHeld: boolean): Promise<JobFile> {
  const { jobId, id, kind, stage, bytes, details } = file;
  if (!isUuid(id)) throw notFound();
  refuseDamaged(bytes, details.sha256);
  refuseUnknownField(stage, details.field);
  const mime = await sniffAllowed(bytes, kind, kind);
  const shown = kind === "photo" ? await shownPicture(bytes, mime) : null;
  const parts = [bytes, ...(shown ? [shown.full, shown.small] : [])];
  const added: string[] = [];
  try {
    return await withTenant(scope, async () => {
      const earlier = await attachments(scope).claim(id, details.sha256);
      if (earlier) return sameAgain(earlier, file);
      for (const part of parts) {
        const name = sha256Of(part);
        if (!(await isStored(scope.tenantId, name))) added.push(name);
        await storeFile(scope.tenantId, part, kind, kind);
      }
      const row: NewAttachment = {
        id: id.toLowerCase(),
        jobId: asId<"job">(jobId),
        kind,
        stage,
        fieldPath: details.field ?? null,
        fileName: file.fileName,
        mime,
        sizeBytes: bytes.byteLength,
        sha256: details.sha256,
        fullSha256: shown ? sha256Of(shown.full) : null,
        smallSha256: shown ? sha256Of(shown.small) : null,
        widthPx: shown?.widthPx ?? null,
        heightPx: shown?.heightPx ?? null,
        caption: details.caption,
        takenAt: details.takenAt ?? null,
        latitude: details.latitude ?? null,
        longitude: details.longitude ?? null,
        isHeld,
      };
      if (kind === "photo" && !isHeld)
        await fieldContacts(scope).note([row.jobId], { photos: details.waiting });
      return attachments(scope).add(row);
    });
  } catch (error) {
    // The row was not kept: its bytes would lie about for ever.
    for (const name of new Set(added))
      await attachments(scope).ifUnused(name, () => deleteStoredFile(scope.tenantId, name));
    throw error;
  }
}

/** Files of a job that everybody who may see the job may see. */
export async function listFiles(scope: TenantScope, jobId: string): Promise<readonly JobFile[]> {
  const job = await getJob(scope, jobId);
  return (await attachments(scope).list([job.id])).map(({ jobId: _, ...file }) => file);
}

export type FileBytes = { readonly bytes: Uint8Array; readonly mime: string; readonly fileName: string };

/** The bytes of a file: as they came, or a picture as it is shown. */
export async function readFile(
  scope: TenantScope,
  jobId: string,
  id: string,
  size: PhotoSize,
): Promise<FileBytes> {
  const file = await attachments(scope).find(jobId, id);
  if (!file || file.isRemoved) throw notFound();
  const [name, mime] = {
    small: [file.smallSha256, "image/jpeg"],
    full: [file.fullSha256, "image/jpeg"],
    original: [file.sha256, file.mime],
    camera: [file.originalSha256, file.originalMime],
  }[size];
  if (!name || !mime) throw notFound();
  return { bytes: await readStoredFile(scope.tenantId, name), mime, fileName: file.fileName };
}

/** Takes a file out of sight. A tech removes only what they added themselves. */
export async function removeFile(scope: TenantScope, jobId: string, id: string): Promise<void> {
  const file = await attachments(scope).find(jobId, id);
  if (!file) throw notFound();
  if (scope.role === "tech" && file.addedById !== scope.userId) throw notFound();
  await attachments(scope).remove(jobId, id);
}

function sameAgain(earlier: StoredAttachment, { jobId, details }: NewFile): JobFile {
  if (earlier.jobId !== jobId.toLowerCase() || earlier.sha256 !== details.sha256) {
    throw new AppError("CONFLICT", "This file’s id was used for another file. Send it under a new one.");
  }
  return toJobFile(earlier);
}

/** What everybody who may see the job may know of a file. */
export function toJobFile(file: StoredAttachment): JobFile {
  const { jobId: _, fullSha256: _f, smallSha256: _s, originalSha256: _o, originalMime: _m, ...rest } = file;
  const { isRemoved: _r, isHeld: _h, ...shown } = rest;
  return shown;
}

/** @throws AppError when the bytes are not those that were announced. */
export function refuseDamaged(bytes: Uint8Array, sha256: string): void {
  if (sha256Of(bytes) === sha256) return;
  throw invalidInput([{ field: "sha256", message: "The file did not arrive whole. Send it again." }]);
}

function refuseUnknownField(stage: StageKey | null, field: string | undefined): void {
  if (field === undefined || (stage !== null && Object.hasOwn(STAGE_FIELDS[stage], field))) return;
  throw invalidInput([{ field: "field", message: `There is no field “${field}”.` }]);
}
