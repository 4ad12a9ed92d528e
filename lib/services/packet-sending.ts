import { randomUUID } from "node:crypto";
import { printedLinkToken } from "@/lib/auth/link-token";
import { packetShares } from "@/lib/db/packet-shares";
import { withTenant } from "@/lib/db/with-tenant";
import { workItems } from "@/lib/db/work-items";
import { PACKET_KIND_NAMES, type Packet } from "@/lib/domain/packets";
import type { TenantScope } from "@/lib/domain/scope";
import { AppError, notFound } from "@/lib/errors";
import { readStoredFile } from "@/lib/files/store";
import { sendMail } from "@/lib/mail/send-mail";
import type { RevokeShareInput, SendPacketInput } from "@/lib/schemas/packets";
import { brandView } from "./brand";
import { getJob } from "./jobs";
import { privateAddress } from "./packet-code";
import { getPacket, packetFileName } from "./packets";
import { tellWebhooks } from "./tell-webhooks";

const A_DAY_MS = 86_400_000;

/**
 * Has a packet sent: a private link that ends, and the file itself where wanted. The mail goes out in the background,
 * where a mail server that is away is tried again; link and task are kept together or not at all.
 */
export async function sendPacket(
  scope: TenantScope,
  input: SendPacketInput,
  now = new Date(),
): Promise<SentShare> {
  const job = await getJob(scope, input.jobId);
  const packet = await getPacket(scope, job, input.packetId);
  const shareId = randomUUID();
  const sent = { jobId: job.id as string, shareId, attach: input.attach };
  await withTenant(scope, async () => {
    await packetShares(scope).add({
      id: shareId,
      jobId: job.id,
      packetId: packet.id,
      purpose: "mail",
      sentTo: input.to,
      message: input.message,
      sha256: packet.sha256,
      tokenHash: tokenOf(scope, shareId).tokenHash,
      expiresAt: new Date(now.getTime() + input.days * A_DAY_MS),
    });
    await workItems(scope).add({
      task: "send packet",
      title: `Send ${PACKET_KIND_NAMES[packet.kind].toLowerCase()} ${packet.revision} of job ${job.number} to ${input.to}`,
      input: sent,
      key: shareId,
    });
  });
  return sent;
}

export type SentShare = { readonly jobId: string; readonly shareId: string; readonly attach: boolean };

/** The same for one sending however often it is tried: a mail that went out twice names one link, which opens. */
function tokenOf(scope: TenantScope, shareId: string) {
  return printedLinkToken(scope.tenantId, `mail ${shareId}`);
}

/**
 * Writes and sends the mail of one sending. One that was withdrawn or sent meanwhile is not sent; why it could not be
 * sent stands beside the link.
 *
 * @returns What came of it, in words.
 */
export async function mailPacket(scope: TenantScope, { jobId, shareId, attach }: SentShare): Promise<string> {
  const job = await getJob(scope, jobId);
  const share = (await packetShares(scope).list(job.id)).find((one) => one.id === shareId);
  if (!share) throw notFound();
  if (share.sentAt !== null) return "It has been sent already.";
  if (share.revokedAt !== null) return "The link was withdrawn before it was sent.";
  const packet = await getPacket(scope, job, share.packetId);
  const brand = await brandView(scope);
  const href = privateAddress(tokenOf(scope, shareId).token);
  try {
    await sendMail({
      to: share.sentTo,
      // Sent again after a stop between sending and noting it, it is the same mail to whoever gets it twice.
      id: `packet-${shareId}`,
      ...MAIL[packet.language](packet, brand.displayName, share.message, href, new Date(share.expiresAt)),
      ...(brand.email === "" ? {} : { replyTo: brand.email }),
      ...(attach
        ? {
            attachments: [
              {
                filename: packetFileName(job, packet),
                contentType: "application/pdf",
                content: await readStoredFile(scope.tenantId, packet.sha256),
              },
            ],
          }
        : {}),
    });
  } catch (error) {
    const refused = error instanceof AppError ? error : null;
    await packetShares(scope).noteProblem(shareId, refused?.message ?? "The mail could not be made.");
    // A wrong address stays wrong: its link shall not stay open.
    if (refused?.code === "INVALID_INPUT") await packetShares(scope).revoke(job.id, shareId);
    throw error;
  }
  await withTenant(scope, async () => {
    await packetShares(scope).markSent(shareId);
    const { id: packetId, kind, sha256 } = packet;
    const of = { jobId: job.id, jobNumber: job.number };
    await tellWebhooks(scope, "packet.sent", shareId, { ...of, packetId, kind, sha256 });
  });
  return `Sent to ${share.sentTo}.`;
}

/** Ends a link at once. */
export async function revokeShare(scope: TenantScope, { jobId, shareId }: RevokeShareInput): Promise<void> {
  const job = await getJob(scope, jobId);
  await packetShares(scope).revoke(job.id, shareId);
}

type Letter = { readonly subject: string; readonly text: string };
type Writer = (packet: Packet, company: string, message: string, href: string, expiresAt: Date) => Letter;

const MAIL: Readonly<Record<Packet["language"], Writer>> = {
  en: (packet, company, message, href, expiresAt) => ({
    subject: `Your packet from ${company}`,
    text: lines([
      message,
      "Open your packet here:",
      href,
      `The link is private and opens until ${day(expiresAt)}. Whoever has it can open the packet.`,
      `SHA-256 of the file: ${packet.sha256}`,
      company,
    ]),
  }),
  es: (packet, company, message, href, expiresAt) => ({
    subject: `Su cuaderno de ${company}`,
    text: lines([
      message,
      "Abra aquí su cuaderno:",
      href,
      `El enlace es privado y abre hasta el ${day(expiresAt)}. Quien lo tenga puede abrir el cuaderno.`,
      `SHA-256 del archivo: ${packet.sha256}`,
      company,
    ]),
  }),
};

const day = (date: Date) => date.toISOString().slice(0, 10);
const lines = (parts: readonly string[]) => parts.filter((part) => part !== "").join("\n\n");
