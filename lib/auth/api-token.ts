import { unscopedApiToken, unscopedNoteTokenUsed } from "@/lib/db/unscoped/api-tokens";
import { unscopedRateLimit } from "@/lib/db/unscoped/rate-limit";
import { API_CALLS_A_MINUTE, type ApiAccess } from "@/lib/domain/api-tokens";
import type { TenantScope } from "@/lib/domain/scope";
import { makeLinkToken, readLinkToken } from "./link-token";
import { makeScope } from "./scope";

/** Tells people, and programs that look for secrets left in the open, what it is. */
const PREFIX = "dewl_";
const HINT_CHARACTERS = 4;

/** A new token of a company: its text, shown once, and what is kept of it. */
export function makeApiToken(tenantId: string): {
  readonly token: string;
  readonly tokenHash: string;
  readonly hint: string;
} {
  const { token, tokenHash } = makeLinkToken(tenantId);
  return { token: PREFIX + token, tokenHash, hint: token.slice(-HINT_CHARACTERS) };
}

export type ApiCaller = {
  readonly scope: TenantScope;
  readonly tokenId: string;
  readonly access: ApiAccess;
};

/**
 * Who a program is, by its `Authorization: Bearer` header: an office manager of the company, in the name of the owner who
 * made the token, for as long as that person is an owner. `null` for a token that is wrong, revoked, expired, foreign or
 * whose maker or company is gone: nobody hears which. A secret has 256 bits, so guesses are not counted.
 */
export async function apiCaller(headers: Headers, now = new Date()): Promise<ApiCaller | null> {
  const text = /^Bearer +(\S+)$/i.exec(headers.get("authorization") ?? "")?.[1];
  if (!text?.startsWith(PREFIX)) return null;
  const link = readLinkToken(text.slice(PREFIX.length));
  if (link === null) return null;
  const found = await unscopedApiToken(link, now);
  if (found === null) return null;
  await unscopedNoteTokenUsed(found, now);
  const { tenantId, userId, membershipVersion, tokenId, access } = found;
  // Never an owner: whatever a service asks of its scope, people, brand, limits and tokens stay out of reach.
  const scope = makeScope({ tenantId, userId, role: "office", membershipVersion, tokenName: found.name });
  return { scope, tokenId, access };
}

/** Counts one call of a token and answers whether it may be made. */
export async function takeApiCall(tokenId: string): Promise<boolean> {
  return (await unscopedRateLimit.count(`api:${tokenId}`, 60)) <= API_CALLS_A_MINUTE;
}
