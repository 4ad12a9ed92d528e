import { readLinkToken } from "@/lib/auth/link-token";
import { forgetPacketGuess, packetGuessesExceeded } from "@/lib/auth/sign-in-limit";
import { type LinkedPacket, unscopedLinkedPacket, unscopedNoteOpened } from "@/lib/db/unscoped/packet-links";
import { notFound } from "@/lib/errors";
import { readStoredFile } from "@/lib/files/store";

/**
 * What a private link opens. One that is guessed, expired, withdrawn or of a closed company finds the same nothing,
 * and so does every link from an address that has guessed too often.
 */
export async function openPacketLink(
  token: string,
  address: string,
  now = new Date(),
): Promise<LinkedPacket> {
  return (await opened(token, address, now)).packet;
}

/** The file behind a private link; that it was opened is noted. */
export async function readLinkedPacket(
  token: string,
  address: string,
  now = new Date(),
): Promise<{ readonly bytes: Uint8Array; readonly fileName: string }> {
  const { packet, link } = await opened(token, address, now);
  const bytes = await readStoredFile(link.tenantId, packet.sha256);
  await unscopedNoteOpened(link.tenantId, link.tokenHash, now);
  return { bytes, fileName: `${packet.kind}-packet-${packet.revision}.pdf` };
}

async function opened(token: string, address: string, now: Date) {
  // Counted first, so that guesses sent at the same moment count each other.
  const tooMany = await packetGuessesExceeded(address);
  const link = readLinkToken(token);
  const packet = link === null ? null : await unscopedLinkedPacket(link.tenantId, link.tokenHash, now);
  if (tooMany || packet === null || link === null) throw notFound();
  await forgetPacketGuess(address);
  return { packet, link };
}
