import { bundleTagWith } from "@/lib/domain/field-bundle";
import type { UploadAnswer } from "./draft";
import type { Who } from "./outbox";
import type { FieldStore, KeptBundle } from "./store";

/**
 * Writes into the kept bundle what the answer to this phone's own upload says of the record, and its version into the
 * bundle's tag: the office need not send all again because of readings that came from here. Answers true when the
 * office says that nothing else is new either.
 */
export async function takeOwnVersion(
  store: FieldStore,
  who: Who,
  jobId: string,
  answer: UploadAnswer,
  now: string,
): Promise<boolean> {
  let noNews = false;
  await store.changeBundle(who, (kept) => {
    const next = withAnswer(kept, jobId, answer, now);
    noNews = next !== null && next.etag === answer.bundleTag;
    return next && (noNews ? { ...next, fetchedAt: now } : next);
  });
  return noNews;
}

/** `null` when the answer changes nothing that is kept. */
function withAnswer(
  { bundle, etag, fetchedAt }: KeptBundle,
  jobId: string,
  { draftVersion, inputs }: UploadAnswer,
  now: string,
): KeptBundle | null {
  const place = bundle.jobs.findIndex((one) => one.id === jobId);
  const job = bundle.jobs[place];
  if (!job || etag === null || draftVersion === null) return null;
  const record = job.records.startup_record;
  // A newer bundle came while this answer was on its way.
  if (record && record.version > draftVersion) return null;
  const tag = bundleTagWith(etag, place, draftVersion);
  if (tag === null) return null;
  const startup = {
    ...(record ?? { revision: 1, signedAt: null, signatureName: null }),
    ...{ state: "draft", version: draftVersion, updatedAt: now, updatedByName: bundle.person.name },
    inputs,
  } as typeof record;
  const jobs = bundle.jobs.with(place, { ...job, records: { ...job.records, startup_record: startup } });
  return { bundle: { ...bundle, jobs }, etag: tag, fetchedAt };
}
