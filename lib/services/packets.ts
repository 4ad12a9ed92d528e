import { packetShares } from "@/lib/db/packet-shares";
import { packets } from "@/lib/db/packets";
import { stageRecords } from "@/lib/db/stage-records";
import { withTenant } from "@/lib/db/with-tenant";
import { dayOf, todayIn } from "@/lib/domain/days";
import { isUuid } from "@/lib/domain/ids";
import type { Job } from "@/lib/domain/jobs";
import {
  PACKET_KIND_NAMES,
  type Packet,
  type PacketKind,
  type PacketShare,
  replacedBy,
} from "@/lib/domain/packets";
import type { TenantScope } from "@/lib/domain/scope";
import { notFound } from "@/lib/errors";
import { readStoredFile, storeFile } from "@/lib/files/store";
import { type PrintedView, pagesOf, renderView } from "@/lib/reports/render-view";
import { rendererName } from "@/lib/reports/renderer";
import type { MakePacketInput } from "@/lib/schemas/packets";
import { homeownerPacketView } from "./homeowner-packet-view";
import { getJob } from "./jobs";
import { hashOfView, keepView } from "./kept-view";
import { type PrintedLink, printedLink } from "./packet-code";
import { packetParts } from "./packet-parts";
import { crewPacketView } from "./packet-views/crew";
import { filePacketView } from "./packet-views/file";
import type { PacketParts, PacketStamp } from "./packet-views/parts";
import { reviewPacketView } from "./packet-views/review";

/** A packet of a job with what became of it. */
export type PacketLine = Packet & {
  /** The revision that replaced it, or `null` while it is the newest of its kind. */
  readonly replacedBy: number | null;
  readonly shares: readonly PacketShare[];
};

export async function listPackets(scope: TenantScope, jobId: string): Promise<readonly PacketLine[]> {
  const job = await getJob(scope, jobId);
  const all = await packets(scope).list(job.id);
  const shares = await packetShares(scope).list(job.id);
  return all.map((one) => ({
    ...one,
    replacedBy: replacedBy(one, all)?.revision ?? null,
    shares: shares.filter((share) => share.packetId === one.id),
  }));
}

type Wanted = Omit<MakePacketInput, "jobId">;

/**
 * Makes a packet, keeps its bytes and its hash. Unchanged records give the packet that exists, also to two people
 * at the same moment: the second waits for the first.
 */
export async function makePacket(
  scope: TenantScope,
  { jobId, ...wanted }: MakePacketInput,
  now = new Date(),
): Promise<Packet["id"]> {
  const job = await getJob(scope, jobId);
  return withTenant(scope, async () => {
    await stageRecords(scope).lock(job.id);
    return madeOrFound(scope, job, wanted, now);
  });
}

async function madeOrFound(scope: TenantScope, job: Job, wanted: Wanted, now: Date): Promise<Packet["id"]> {
  const { kind, language, paper } = wanted;
  const parts = await packetParts(scope, job, { kind, paper, language });
  const ofKind = (await packets(scope).list(job.id)).filter((one) => one.kind === kind);
  const newest = ofKind.find((one) => one.language === language && one.paper === paper);
  const inputsHash = hashOfView(viewOf(kind, language, parts, null));
  // Only the newest: an older one with the same content has been replaced since.
  if (newest?.inputsHash === inputsHash) return newest.id;
  const revision = Math.max(0, ...ofKind.map((one) => one.revision)) + 1;
  const stamp = stampOf(job, wanted, revision, newest ?? null, now, parts.timeZone);
  const link = kind === "homeowner" ? printedLink(scope.tenantId, job.id, revision, now) : null;
  const view = viewOf(kind, language, { ...parts, ...stamp }, link);
  const bytes = await renderView(view);
  const stored = await storeFile(scope.tenantId, bytes, "packet", "packet");
  const packetId = await packets(scope).add({
    jobId: job.id,
    kind,
    language,
    paper,
    revision,
    sha256: stored.sha256,
    inputsHash,
    engineVersion: parts.evaluation.engineVersion,
    sizeBytes: stored.size,
    pages: pagesOf(bytes),
    viewSha256: await keepView(scope.tenantId, view),
    renderer: rendererName(),
  });
  if (link !== null) {
    await packetShares(scope).add({
      jobId: job.id,
      packetId,
      purpose: "code",
      sentTo: "",
      message: "",
      sha256: stored.sha256,
      tokenHash: link.tokenHash,
      expiresAt: link.expiresAt,
    });
  }
  return packetId;
}

function stampOf(
  job: Job,
  { kind, language }: Wanted,
  revision: number,
  last: Packet | null,
  now: Date,
  timeZone: string,
): PacketStamp {
  const lastDay = last === null ? "" : dayOf(last.createdAt, timeZone);
  const spanish = language === "es";
  const replaces = spanish
    ? `reemplaza al ${last?.revision} del ${lastDay}`
    : `replaces ${last?.revision} of ${lastDay}`;
  return {
    documentId: spanish
      ? `Trabajo ${job.number}, cuaderno ${revision}`
      : `Job ${job.number}, ${PACKET_KIND_NAMES[kind].toLowerCase()} ${revision}`,
    revisionNote: last ? replaces : "",
    createdOn: todayIn(timeZone, now),
  };
}

/** What a packet prints, as plain data. */
function viewOf(
  kind: PacketKind,
  language: Wanted["language"],
  parts: PacketParts,
  link: PrintedLink | null,
): PrintedView {
  if (kind === "homeowner") return homeownerPacketView(parts, language, link);
  if (kind === "crew") return crewPacketView(parts);
  return kind === "file" ? filePacketView(parts) : reviewPacketView(parts);
}

/** The packet of a job under an id. */
export async function getPacket(scope: TenantScope, job: Job, packetId: string): Promise<Packet> {
  const found = isUuid(packetId)
    ? (await packets(scope).list(job.id)).find((one) => one.id === packetId)
    : undefined;
  if (!found) throw notFound();
  return found;
}

/** The bytes of one packet of a job, as they were made. */
export async function readPacket(
  scope: TenantScope,
  jobId: string,
  packetId: string,
): Promise<{ readonly bytes: Uint8Array; readonly fileName: string }> {
  const job = await getJob(scope, jobId);
  const found = await getPacket(scope, job, packetId);
  return { bytes: await readStoredFile(scope.tenantId, found.sha256), fileName: packetFileName(job, found) };
}

export function packetFileName(job: Job, { kind, revision, language }: Packet): string {
  return `job-${job.number}-${kind}-${revision}${language === "en" ? "" : `-${language}`}.pdf`;
}
