import { createHash, randomBytes } from "node:crypto";

/** A secret for a link or a token, and the hash that is stored in its place. */
export function makeSecret(): { readonly secret: string; readonly hash: string } {
  const secret = randomBytes(32).toString("base64url");
  return { secret, hash: hashSecret(secret) };
}

/** The secret has 256 bits of chance, so a plain hash is enough; a slow one would only cost time. */
export function hashSecret(secret: string): string {
  return createHash("sha256").update(secret).digest("hex");
}
