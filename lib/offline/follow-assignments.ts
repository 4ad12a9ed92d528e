import type { FieldBundle } from "@/lib/domain/field-bundle";
import { recordOf, viewOf } from "./bundle";
import { emptyDraft, refreshed } from "./draft";
import { type Handing, handOverJob } from "./hand-over";

/**
 * Brings the drafts in line with the jobs assigned now: each learns the record as it stands, and what is held of
 * a job that is no longer this person's goes to the office and off the phone. What cannot go yet stays.
 */
export async function followAssignments(
  handing: Handing,
  bundle: FieldBundle,
  isNew: boolean,
): Promise<void> {
  const { store, who } = handing;
  const assigned = new Map(viewOf(bundle).jobs.map((job) => [job.id, job]));
  for (const jobId of Object.keys(await store.readDrafts(who))) {
    const job = assigned.get(jobId);
    if (!job) {
      if (await handOverJob(handing, jobId)) return;
    } else if (isNew) {
      const known = recordOf(job);
      await store.changeDraft(who, jobId, (old) => refreshed(old ?? emptyDraft(known), known));
    }
  }
}
