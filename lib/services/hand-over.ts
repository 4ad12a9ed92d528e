import { takeHandOver } from "@/lib/auth/hand-over-limit";
import { attachments } from "@/lib/db/attachments";
import { fieldContacts } from "@/lib/db/field-contacts";
import { heldValues } from "@/lib/db/held-values";
import { withTenant } from "@/lib/db/with-tenant";
import type { TenantScope } from "@/lib/domain/scope";
import { AppError, notFound } from "@/lib/errors";
import type { HandOverInput, PhotoDetails } from "@/lib/schemas/field";
import { holdFile } from "./attachments";

/** What one person can leave waiting at most, so that a grudge cannot fill the office's desk or disk. */
const MOST_VALUES = 2_000;
const MOST_PHOTOS = 100;

/**
 * Takes what a phone still holds of jobs that its person may not see any more, and keeps it apart until the
 * office has looked at it. Only jobs that were on this person's phone; nothing is told about them. Whatever
 * the values are they are kept: they are judged when the office takes them.
 */
export async function handOver(scope: TenantScope, input: HandOverInput): Promise<{ readonly kept: true }> {
  const { jobs, clientId, deviceTime } = input;
  const ids = [...new Set(jobs.map((one) => one.jobId.toLowerCase()))];
  await refuseTooMany(scope);
  await withTenant(scope, async () => {
    await refuseUnknown(scope, ids);
    const waiting = await heldValues(scope).count();
    const more = jobs.reduce((sum, one) => sum + Object.keys(one.fields).length, 0);
    if (waiting + more > MOST_VALUES) throw full();
    for (const { jobId, fields } of jobs) {
      await heldValues(scope).keep(
        Object.entries(fields).map(([fieldPath, { base, value }]) => ({
          jobId: jobId.toLowerCase(),
          stage: "startup_record",
          fieldPath,
          base,
          value,
          reason: "handed over",
          clientId,
          deviceTime,
        })),
      );
    }
  });
  return { kept: true };
}

/** The same for a picture. */
export async function handOverPhoto(
  scope: TenantScope,
  photo: {
    readonly jobId: string;
    readonly id: string;
    readonly read: () => Promise<{ readonly bytes: Uint8Array; readonly details: PhotoDetails }>;
  },
): Promise<{ readonly kept: true }> {
  await refuseTooMany(scope);
  await refuseUnknown(scope, [photo.jobId.toLowerCase()]);
  if ((await attachments(scope).heldCount()) >= MOST_PHOTOS) throw full();
  const { bytes, details } = await photo.read();
  const { jobId, id } = photo;
  await holdFile(scope, {
    jobId,
    id,
    kind: "photo",
    stage: "startup_record",
    fileName: "photo",
    bytes,
    details,
  });
  return { kept: true };
}

async function refuseTooMany(scope: TenantScope): Promise<void> {
  if (await takeHandOver(scope)) return;
  throw new AppError(
    "TOO_MANY_TRIES",
    "Too much was handed over in the last hour. Wait an hour, then go on.",
  );
}

async function refuseUnknown(scope: TenantScope, jobIds: readonly string[]): Promise<void> {
  const had = await fieldContacts(scope).had(jobIds);
  if (had.length !== jobIds.length) throw notFound();
}

function full(): AppError {
  return new AppError(
    "TOO_MANY_TRIES",
    "Too much of yours waits for the office already. Ask the office to look at it.",
  );
}
