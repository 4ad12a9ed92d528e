import { attachments } from "@/lib/db/attachments";
import { fieldContacts } from "@/lib/db/field-contacts";
import { photoOriginals } from "@/lib/db/photo-originals";
import { withTenant } from "@/lib/db/with-tenant";
import type { JobFile } from "@/lib/domain/field-bundle";
import { asId, isUuid } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { AppError, notFound } from "@/lib/errors";
import { sniffAllowed } from "@/lib/files/sniff";
import { deleteStoredFile, isStored, storeFile } from "@/lib/files/store";
import type { NO_ORIGINAL } from "@/lib/schemas/field";
import { refuseDamaged, toJobFile } from "./attachments";
import { getJob } from "./jobs";

type Named = { readonly jobId: string; readonly photoId: string };

/** Asks the phone that took a picture for the camera's own. It hears of it with its next contact. */
export async function askOriginal(scope: TenantScope, { jobId, photoId }: Named): Promise<void> {
  const job = await getJob(scope, jobId);
  await photoOriginals(scope).ask(job.id, photoId, new Date());
}

/** Takes the wish back: nobody waits any more, and the phone hears of it with its next contact. */
export async function withdrawOriginal(scope: TenantScope, { jobId, photoId }: Named): Promise<void> {
  const job = await getJob(scope, jobId);
  await photoOriginals(scope).withdraw(job.id, photoId);
}

/**
 * Keeps an original that was asked for, beside the picture it belongs to. Only who took the picture sends it; the same
 * bytes again are the same original.
 */
export async function addOriginal(
  scope: TenantScope,
  { jobId, photoId, bytes, sha256 }: Named & { readonly bytes: Uint8Array; readonly sha256: string },
): Promise<JobFile> {
  const job = await getJob(scope, jobId);
  if (!isUuid(photoId)) throw notFound();
  refuseDamaged(bytes, sha256);
  const mime = await sniffAllowed(bytes, "photo", "photo");
  let added = false;
  try {
    return await withTenant(scope, async () => {
      const file = await attachments(scope).claim(photoId, sha256);
      const isOwn = file?.jobId === job.id && file.kind === "photo" && file.addedById === scope.userId;
      if (!file || !isOwn || file.isRemoved || file.isHeld) throw notFound();
      if (file.originalSha256 === sha256) return toJobFile(file);
      if (file.originalSha256 !== null || file.original === null) {
        const why = file.original === null ? "Nobody asked for the original" : "Another original has come";
        throw new AppError("CONFLICT", `${why} of this photo.`);
      }
      added = !(await isStored(scope.tenantId, sha256));
      await storeFile(scope.tenantId, bytes, "photo", "photo");
      await photoOriginals(scope).receive(file, job.id, { sha256, mime, sizeBytes: bytes.byteLength });
      await fieldContacts(scope).note([asId<"job">(job.id)]);
      return { ...toJobFile(file), original: "received" };
    });
  } catch (error) {
    // The row was not changed: its bytes would lie about for ever.
    if (added) await attachments(scope).ifUnused(sha256, () => deleteStoredFile(scope.tenantId, sha256));
    throw error;
  }
}

/** Keeps that a phone has no original to send, so that nobody waits for it. */
export async function sayNoOriginal(
  scope: TenantScope,
  { jobId, photoId, why }: Named & { readonly why: (typeof NO_ORIGINAL)[number] },
): Promise<void> {
  const job = await getJob(scope, jobId);
  await photoOriginals(scope).cannotCome(job.id, photoId, why);
}
