import { createHash } from "node:crypto";
import { type Packet, packets } from "@/lib/db/packets";
import { stageRecords } from "@/lib/db/stage-records";
import { withTenant } from "@/lib/db/with-tenant";
import { evaluateJob } from "@/lib/domain/evaluate";
import { isUuid } from "@/lib/domain/ids";
import type { Job } from "@/lib/domain/jobs";
import type { TenantScope } from "@/lib/domain/scope";
import { notFound } from "@/lib/errors";
import { readStoredFile, storeFile } from "@/lib/files/store";
import type { HomeownerPacketView } from "@/lib/reports/homeowner/view";
import { renderHomeownerPacket } from "@/lib/reports/render-homeowner-packet";
import { packetBrand } from "./brand";
import { jobContext } from "./evaluate";
import { homeownerPacketView } from "./homeowner-packet-view";
import { getJob } from "./jobs";
import { logPanelView } from "./log-view";

export async function listPackets(scope: TenantScope, jobId: string): Promise<readonly Packet[]> {
  const job = await getJob(scope, jobId);
  return packets(scope).list(job.id);
}

/**
 * Makes the homeowner's packet, keeps its bytes and its hash. Unchanged records give the packet that exists,
 * also to two people at the same moment: the second waits for the first.
 */
export async function makeHomeownerPacket(
  scope: TenantScope,
  jobId: string,
  now = new Date(),
): Promise<Packet["id"]> {
  const job = await getJob(scope, jobId);
  return withTenant(scope, async () => {
    await stageRecords(scope).lock(job.id);
    return madeOrFound(scope, job, now);
  });
}

async function madeOrFound(scope: TenantScope, job: Job, now: Date): Promise<Packet["id"]> {
  const records = await stageRecords(scope).latest(job.id);
  const context = await jobContext(scope, job, records);
  const evaluation = evaluateJob(context);
  const { humidityLimitPct } = context.inputs.load_summary;
  const log = await logPanelView(scope, job, context.log?.importId ?? null, humidityLimitPct);
  const brand = await packetBrand(scope);
  const newest = (await packets(scope).list(job.id)).find((one) => one.kind === "homeowner");
  const revision = (newest?.revision ?? 0) + 1;
  const undated = homeownerPacketView({
    job,
    records,
    evaluation,
    context,
    log,
    brand,
    documentId: "",
    revisionNote: "",
    createdOn: "",
  });
  const inputsHash = hashOf(undated);
  // Only the newest: an older one with the same content has been replaced since.
  if (newest?.inputsHash === inputsHash) return newest.id;
  const view: HomeownerPacketView = {
    ...undated,
    documentId: `Job ${job.number}, homeowner packet ${revision}`,
    revisionNote: newest
      ? `Packet ${revision}, replaces packet ${newest.revision} of ${newest.createdAt.slice(0, 10)}`
      : "",
    createdOn: now.toISOString().slice(0, 10),
  };
  const bytes = await renderHomeownerPacket(view);
  const stored = await storeFile(scope.tenantId, bytes, "packet", "packet");
  return packets(scope).add({
    jobId: job.id,
    kind: "homeowner",
    revision,
    sha256: stored.sha256,
    inputsHash,
    engineVersion: evaluation.engineVersion,
    sizeBytes: stored.size,
    pages: pagesOf(bytes),
  });
}

/** The bytes of one packet of a job, as they were made. */
export async function readPacket(
  scope: TenantScope,
  jobId: string,
  packetId: string,
): Promise<{ readonly bytes: Uint8Array; readonly fileName: string }> {
  const job = await getJob(scope, jobId);
  const found = isUuid(packetId)
    ? (await packets(scope).list(job.id)).find((one) => one.id === packetId)
    : undefined;
  if (!found) throw notFound();
  return {
    bytes: await readStoredFile(scope.tenantId, found.sha256),
    fileName: `job-${job.number}-${found.kind}-${found.revision}.pdf`,
  };
}

function hashOf(view: HomeownerPacketView): string {
  const text = JSON.stringify(view, (_, value) =>
    value instanceof Uint8Array ? createHash("sha256").update(value).digest("hex") : value,
  );
  return createHash("sha256").update(text).digest("hex");
}

/** The page objects of the file; the renderer writes them uncompressed. */
function pagesOf(bytes: Uint8Array): number {
  return (
    Buffer.from(bytes)
      .toString("latin1")
      .match(/\/Type\s*\/Page\b/g)?.length ?? 0
  );
}
