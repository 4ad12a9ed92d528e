import { createHmac } from "node:crypto";
import { env } from "@/lib/env";
import { hashSecret, makeSecret } from "./one-time-secret";

/** What a link carries: whose it is, so that the database looks in one company only, and a secret. */
export type LinkToken = { readonly tenantId: string; readonly tokenHash: string };

const TENANT_CHARACTERS = 22;
const SHAPE = /^[A-Za-z0-9_-]{65}$/;

/** A new token for a link of a company. */
export function makeLinkToken(tenantId: string): { readonly token: string; readonly tokenHash: string } {
  const { secret, hash } = makeSecret();
  return { token: tenantPart(tenantId) + secret, tokenHash: hash };
}

/**
 * The token that a packet carries printed on itself. It follows from what it is for, so that the same packet made
 * again is the same bytes, and from the installation's secret, so that nobody else can work it out.
 */
export function printedLinkToken(
  tenantId: string,
  what: string,
): { readonly token: string; readonly tokenHash: string } {
  const secret = createHmac("sha256", env().NEXTAUTH_SECRET)
    .update(`printed link ${tenantId} ${what}`)
    .digest("base64url");
  return { token: tenantPart(tenantId) + secret, tokenHash: hashSecret(secret) };
}

/** Takes a token apart; `null` for anything that is none. */
export function readLinkToken(token: string): LinkToken | null {
  if (!SHAPE.test(token)) return null;
  const hex = Buffer.from(token.slice(0, TENANT_CHARACTERS), "base64url").toString("hex");
  const tenantId = hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5");
  return { tenantId, tokenHash: hashSecret(token.slice(TENANT_CHARACTERS)) };
}

function tenantPart(tenantId: string): string {
  return Buffer.from(tenantId.replaceAll("-", ""), "hex").toString("base64url");
}
