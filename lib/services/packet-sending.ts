import { makeLinkToken } from "@/lib/auth/link-token";
import { packetShares } from "@/lib/db/packet-shares";
import type { Packet } from "@/lib/domain/packets";
import type { TenantScope } from "@/lib/domain/scope";
import { readStoredFile } from "@/lib/files/store";
import { sendMail } from "@/lib/mail/send-mail";
import type { RevokeShareInput, SendPacketInput } from "@/lib/schemas/packets";
import { brandView } from "./brand";
import { getJob } from "./jobs";
import { privateAddress } from "./packet-code";
import { getPacket, packetFileName } from "./packets";

const A_DAY_MS = 86_400_000;

/** Sends a packet: a private link that ends, and the file itself where wanted. */
export async function sendPacket(
  scope: TenantScope,
  input: SendPacketInput,
  now = new Date(),
): Promise<void> {
  const job = await getJob(scope, input.jobId);
  const packet = await getPacket(scope, job, input.packetId);
  const brand = await brandView(scope);
  const { token, tokenHash } = makeLinkToken(scope.tenantId);
  const expiresAt = new Date(now.getTime() + input.days * A_DAY_MS);
  const shareId = await packetShares(scope).add({
    jobId: job.id,
    packetId: packet.id,
    purpose: "mail",
    sentTo: input.to,
    message: input.message,
    sha256: packet.sha256,
    tokenHash,
    expiresAt,
  });
  const href = privateAddress(token);
  try {
    await sendMail({
      to: input.to,
      ...MAIL[packet.language](packet, brand.displayName, input.message, href, expiresAt),
      ...(brand.email === "" ? {} : { replyTo: brand.email }),
      ...(input.attach
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
    // A link nobody was told of shall not stay open.
    await packetShares(scope).revoke(job.id, shareId);
    throw error;
  }
  await packetShares(scope).markSent(shareId);
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
