import { createHash, createHmac, randomBytes, timingSafeEqual } from "node:crypto";
import { env } from "@/lib/env";

const DAYS = 400;
const SHAPE = /^([A-Za-z0-9_-]{22})\.([A-Za-z0-9_-]{43})$/;

/**
 * The cookie by which a browser is known again in which a person has once signed in. Wrong passwords from elsewhere do not
 * count for it: whoever knows the addresses of a company's people could otherwise keep them all out by guessing wrong.
 * It opens nothing by itself.
 *
 * @returns The header that sets it.
 */
export function deviceCookie(email: string): string {
  const nonce = randomBytes(16).toString("base64url");
  const secure = env().NEXTAUTH_URL.startsWith("https:") ? "; Secure" : "";
  return `${nameOf(email)}=${nonce}.${macOf(email, nonce)}; Path=/api/auth; Max-Age=${DAYS * 86_400}; HttpOnly; SameSite=Lax${secure}`;
}

/** The name of the known device that sends these cookies; `null` when it is none of this person's. */
export function knownDevice(email: string, cookies: string | null | undefined): string | null {
  const begins = `${nameOf(email)}=`;
  const cookie = (cookies ?? "").split(/; */).find((one) => one.startsWith(begins));
  const [, nonce, mac] = SHAPE.exec(cookie?.slice(begins.length) ?? "") ?? [];
  if (nonce === undefined || mac === undefined) return null;
  return timingSafeEqual(Buffer.from(mac), Buffer.from(macOf(email, nonce))) ? nonce : null;
}

/** One a person, so that several can share a computer. */
const nameOf = (email: string) =>
  `dewledger-device-${createHash("sha256").update(email).digest("hex").slice(0, 12)}`;

const macOf = (email: string, nonce: string) =>
  createHmac("sha256", env().NEXTAUTH_SECRET).update(`known device ${nonce} ${email}`).digest("base64url");
