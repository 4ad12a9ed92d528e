import { attachments } from "@/lib/db/attachments";
import type { JobFile } from "@/lib/domain/field-bundle";
import type { Job } from "@/lib/domain/jobs";
import type { TenantScope } from "@/lib/domain/scope";
import { STAGE_FIELDS } from "@/lib/domain/stages";
import { readStoredFile } from "@/lib/files/store";
import type { PrintedPhoto } from "@/lib/reports/sheet/view";

/** More would make a file nobody can open on a phone; the rest stays with the job and is named. */
export const MOST_PHOTOS = 120;

/** The photographs of a job as paper shows them: the small copies, oldest first, each with what it proves. */
export async function packetPhotos(scope: TenantScope, job: Job): Promise<readonly PrintedPhoto[]> {
  const files = await attachments(scope).list([job.id]);
  const photos: PrintedPhoto[] = [];
  for (const file of files) {
    if (file.kind !== "photo" || photos.length >= MOST_PHOTOS) continue;
    const stored = await attachments(scope).find(job.id, file.id);
    // A picture of a kind that cannot be drawn here has no small copy; it stays with the job.
    if (!stored || stored.smallSha256 === null || file.widthPx === null || file.heightPx === null) continue;
    photos.push({
      jpeg: await readStoredFile(scope.tenantId, stored.smallSha256),
      widthPx: file.widthPx,
      heightPx: file.heightPx,
      caption: captionOf(file),
    });
  }
  return photos;
}

function captionOf({ caption, stage, fieldPath, takenAt, addedAt, addedByName, fileName }: JobFile): string {
  const field = stage === null || fieldPath === null ? undefined : STAGE_FIELDS[stage][fieldPath];
  const what = [caption, field?.label ?? ""].filter((part) => part !== "").join(", ") || fileName;
  return `${what}. ${(takenAt ?? addedAt).slice(0, 10)}, ${addedByName}`;
}
