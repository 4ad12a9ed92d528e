import { createHmac } from "node:crypto";

/** `signed-at` is when, in seconds; `sha256` the HMAC-SHA-256 over time, a dot and the body, in hex. */
export function signatureOf(secret: string, body: string, atSeconds: number): string {
  const digest = createHmac("sha256", secret).update(`${atSeconds}.${body}`).digest("hex");
  return `signed-at=${atSeconds}; sha256=${digest}`;
}
