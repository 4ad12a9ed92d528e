import { company } from "@/lib/db/company";
import { packets } from "@/lib/db/packets";
import { dayOf } from "@/lib/domain/days";
import type { Job } from "@/lib/domain/jobs";
import { type Packet, replacedBy } from "@/lib/domain/packets";
import type { TenantScope } from "@/lib/domain/scope";
import { AppError } from "@/lib/errors";
import { readStoredFile, sha256Of } from "@/lib/files/store";
import { type PrintedView, pagesOf, renderView } from "@/lib/reports/render-view";
import { rendererName } from "@/lib/reports/renderer";
import { getJob } from "./jobs";
import { readView } from "./kept-view";
import { getPacket, packetFileName } from "./packets";

/** What came of printing a packet again: nothing differs, or each thing that does, in a sentence. */
export type PacketCheck = { readonly sameBytes: boolean; readonly says: readonly string[] };

type Wanted = { readonly jobId: string; readonly packetId: string };

/**
 * Prints a packet again from what was kept of it, and compares the bytes with those that were made then. The kept
 * file is read and its hash worked out as well: it is what was sent.
 */
export async function checkPacket(scope: TenantScope, { jobId, packetId }: Wanted): Promise<PacketCheck> {
  const renderer = rendererName();
  const packet = await getPacket(scope, await getJob(scope, jobId), packetId);
  const kept = await readStoredFile(scope.tenantId, packet.sha256);
  const view = await viewOf(scope, packet);
  const bytes = await renderView(view).catch(() => null);
  if (bytes === null)
    return {
      sameBytes: false,
      says: [
        `It was made by renderer ${packet.renderer}; this one (${renderer}) cannot print what was kept then.`,
        KEPT,
      ],
    };
  if (sha256Of(bytes) === packet.sha256)
    return { sameBytes: true, says: [`Printed again: the same ${kept.byteLength} bytes, by SHA-256.`] };
  const [pages, size] = [pagesOf(bytes), bytes.byteLength];
  return {
    sameBytes: false,
    says: [
      renderer === packet.renderer
        ? `It was made by the same renderer (${renderer}): report this, the bytes should be the same.`
        : `It was made by renderer ${packet.renderer}; this is ${renderer}.`,
      pages === packet.pages ? `${pages} pages, as before.` : `${pages} pages instead of ${packet.pages}.`,
      `${size} bytes instead of ${packet.sizeBytes}.`,
      KEPT,
    ],
  };
}

const KEPT = "What was sent is kept as it was, and its hash still fits.";

/** A packet that has been replaced, printed again with words on every page that say so. */
export async function readReplacedPacket(
  scope: TenantScope,
  { jobId, packetId }: Wanted,
): Promise<{ readonly bytes: Uint8Array; readonly fileName: string }> {
  const job = await getJob(scope, jobId);
  const packet = await getPacket(scope, job, packetId);
  const newer = replacedBy(packet, await packets(scope).list(job.id));
  const { timeZone } = await company(scope).get();
  if (newer === null)
    throw new AppError("CONFLICT", "No newer packet has replaced this one. Open it as it was made.");
  const replacedNote = NOTES[packet.language](newer.revision, dayOf(newer.createdAt, timeZone));
  const bytes = await renderView({ ...(await viewOf(scope, packet)), replacedNote });
  return { bytes, fileName: markedName(job, packet) };
}

const NOTES: Readonly<Record<Packet["language"], (revision: number, day: string) => string>> = {
  en: (revision, day) => `Replaced by ${revision} of ${day}. For the record only.`,
  es: (revision, day) => `Reemplazado por el ${revision} del ${day}. Solo como constancia.`,
};

function markedName(job: Job, packet: Packet): string {
  return packetFileName(job, packet).replace(/\.pdf$/, "-replaced.pdf");
}

async function viewOf(scope: TenantScope, { viewSha256 }: Packet): Promise<PrintedView> {
  if (viewSha256 === "")
    throw new AppError(
      "CONFLICT",
      "This packet was made before its contents were kept, so it cannot be printed again. The file itself is kept.",
    );
  return readView(scope.tenantId, viewSha256);
}
