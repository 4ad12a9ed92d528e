import type { FieldBundle } from "@/lib/domain/field-bundle";
import { recordOf, viewOf } from "./bundle";
import { emptyDraft, refreshed, waiting } from "./draft";
import { type Handing, handOverJob } from "./hand-over";

/**
 * Brings the drafts in line with the jobs assigned now: each learns the record as it stands, and what is held of
 * a job that is no longer this person's goes to the office and off the phone. What cannot go yet stays. Answers how
 * many jobs went that still held something.
 */
export async function followAssignments(
  handing: Handing,
  bundle: FieldBundle,
  isNew: boolean,
): Promise<number> {
  const { store, who } = handing;
  const assigned = new Map(viewOf(bundle).jobs.map((job) => [job.id, job]));
  const drafts = await store.readDrafts(who);
  const photos = await store.photos(who);
  let gone = 0;
  for (const jobId of new Set([...Object.keys(drafts), ...photos.map((photo) => photo.jobId)])) {
    const job = assigned.get(jobId);
    if (job) {
      if (!isNew || !drafts[jobId]) continue;
      const known = recordOf(job);
      await store.changeDraft(who, jobId, (old) => refreshed(old ?? emptyDraft(known), known));
      continue;
    }
    const draft = drafts[jobId];
    const held =
      (draft && waiting(draft) > 0) || photos.some((one) => one.jobId === jobId && one.state.at !== "office");
    if (await handOverJob(handing, jobId)) return gone;
    if (held) gone += 1;
  }
  return gone;
}
