import { type PhotoTaker, photoOriginals } from "@/lib/db/photo-originals";
import { questions } from "@/lib/db/questions";
import type { FieldQuestion, JobFile } from "@/lib/domain/field-bundle";
import type { TenantScope } from "@/lib/domain/scope";
import type { StartupProgress } from "@/lib/domain/startup-progress";
import { listFiles } from "./attachments";
import { type LateReadings, lateReadings } from "./late-readings";
import { watchedJob } from "./progress";

export type FieldOfficeView = {
  readonly progress: StartupProgress;
  readonly timeZone: string;
  readonly questions: readonly FieldQuestion[];
  readonly late: LateReadings;
  readonly photos: readonly OfficePhoto[];
};

/** A picture with who took it, as far as their phone can be asked for the original. */
export type OfficePhoto = JobFile & { readonly taker: Omit<PhotoTaker, "userId"> };

/** Somebody whose row is gone has no phone that could be asked. */
const NOBODY = { isHere: false, isOnJob: false, lastContact: null };

/** What the office sees of a job in the field. */
export async function fieldOfficeView(scope: TenantScope, jobId: string): Promise<FieldOfficeView> {
  const { progress, timeZone } = await watchedJob(scope, jobId);
  const [open, late, files, takers] = await Promise.all([
    questions(scope).open([progress.jobId]),
    lateReadings(scope, progress.jobId),
    listFiles(scope, progress.jobId),
    photoOriginals(scope).takers(progress.jobId),
  ]);
  const photos = files
    .filter((one) => one.kind === "photo")
    .map((one) => ({ ...one, taker: takers.find(({ userId }) => userId === one.addedById) ?? NOBODY }));
  return { progress, timeZone, questions: open, late, photos };
}
