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
  readonly photos: readonly JobFile[];
};

/** What the office sees of a job in the field. */
export async function fieldOfficeView(scope: TenantScope, jobId: string): Promise<FieldOfficeView> {
  const { progress, timeZone } = await watchedJob(scope, jobId);
  const [open, late, files] = await Promise.all([
    questions(scope).open([progress.jobId]),
    lateReadings(scope, progress.jobId),
    listFiles(scope, progress.jobId),
  ]);
  return { progress, timeZone, questions: open, late, photos: files.filter((one) => one.kind === "photo") };
}
