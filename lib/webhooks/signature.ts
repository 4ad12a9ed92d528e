import { createHmac } from "node:crypto";

/** `t` is when it was signed, seconds; `v1` the HMAC-SHA-256 over time, a dot and the body, in hex. */
export function signatureOf(secret: string, body: string, atSeconds: number): string {
  const digest = createHmac("sha256", secret).update(`${atSeconds}.${body}`).digest("hex");
  return `t=${atSeconds},v1=${digest}`;
}
