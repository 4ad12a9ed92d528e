import { createCipheriv, createDecipheriv, hkdfSync, randomBytes } from "node:crypto";
import { env } from "@/lib/env";

const NONCE = 12;
const TAG = 16;

/**
 * A secret that must be read again, encrypted with the installation's own (AES-256-GCM). `what` is what it belongs to: moved to
 * another row it does not open.
 */
export function sealSecret(secret: string, what: string): string {
  const nonce = randomBytes(NONCE);
  const cipher = createCipheriv("aes-256-gcm", key(), nonce).setAAD(Buffer.from(what));
  const text = Buffer.concat([cipher.update(secret, "utf8"), cipher.final()]);
  return Buffer.concat([nonce, cipher.getAuthTag(), text]).toString("base64url");
}

/** The secret, or `null` when it was sealed with another installation's secret, for something else, or changed. */
export function openSecret(sealed: string, what: string): string | null {
  const bytes = Buffer.from(sealed, "base64url");
  if (bytes.length <= NONCE + TAG) return null;
  try {
    const decipher = createDecipheriv("aes-256-gcm", key(), bytes.subarray(0, NONCE))
      .setAAD(Buffer.from(what))
      .setAuthTag(bytes.subarray(NONCE, NONCE + TAG));
    return decipher.update(bytes.subarray(NONCE + TAG), undefined, "utf8") + decipher.final("utf8");
  } catch {
    return null;
  }
}

/** A key of its own, so that what signs sessions encrypts nothing. */
function key(): Buffer {
  return Buffer.from(hkdfSync("sha256", env().NEXTAUTH_SECRET, "", "dewledger sealed secrets", 32));
}
