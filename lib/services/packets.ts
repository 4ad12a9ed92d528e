import { createHash } from "node:crypto";
import { type Packet, packets } from "@/lib/db/packets";
import { stageRecords } from "@/lib/db/stage-records";
import { evaluateJob } from "@/lib/domain/evaluate";
import { isUuid } from "@/lib/domain/ids";
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

/** Makes the homeowner's packet, keeps its bytes and its hash. Unchanged records give the packet that exists. */
export async function makeHomeownerPacket(
  scope: TenantScope,
  jobId: string,
  now = new Date(),
): Promise<Packet["id"]> {
  const job = await getJob(scope, jobId);
  const records = await stageRecords(scope).latest(job.id);
  const context = await jobContext(scope, job, records);
  const evaluation = evaluateJob(context);
  const [log, brand, made] = await Promise.all([
    logPanelView(scope, job, context.log?.importId ?? null, context.inputs.load_summary.humidityLimitPct),
    packetBrand(scope),
    packets(scope).list(job.id),
  ]);
  const earlier = made.filter((one) => one.kind === "homeowner");
  const revision = (earlier[0]?.revision ?? 0) + 1;
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
  const same = earlier.find((one) => one.inputsHash === inputsHash);
  if (same) return same.id;
  const view: HomeownerPacketView = {
    ...undated,
    documentId: `Job ${job.number}, homeowner packet ${revision}`,
    revisionNote: earlier[0]
      ? `Packet ${revision}, replaces packet ${earlier[0].revision} of ${earlier[0].createdAt.slice(0, 10)}`
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
