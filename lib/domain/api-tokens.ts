import type { Id } from "./ids";

export type ApiTokenId = Id<"API token">;

/** What a token may do. Reading comes with both. */
export const API_ACCESS = {
  read: { label: "Read", hint: "Jobs, ledgers, findings, callbacks, packets" },
  write: { label: "Read, and add callbacks and logs", hint: "Takes nothing away and changes nothing else" },
} as const;
export type ApiAccess = keyof typeof API_ACCESS;
export const API_ACCESS_KEYS = Object.keys(API_ACCESS) as readonly ApiAccess[];

/** How long a token may live. None lives for ever: a forgotten one ends by itself. */
export const API_TOKEN_DAYS = { "30": "30 days", "90": "90 days", "365": "One year" } as const;
export type ApiTokenDays = keyof typeof API_TOKEN_DAYS;
export const API_TOKEN_DAYS_KEYS = ["30", "90", "365"] as const satisfies readonly ApiTokenDays[];

/** More than anyone connects; who reaches it has forgotten some. */
export const MOST_API_TOKENS = 20;

/** Calls of one token in a minute. A list of 10,000 jobs is read in half of it. */
export const API_CALLS_A_MINUTE = 120;

/** A token as its company sees it: never its secret. Instants are ISO texts. */
export type ApiToken = {
  readonly id: ApiTokenId;
  readonly name: string;
  readonly access: ApiAccess;
  /** The end of its secret, to recognise it by. */
  readonly hint: string;
  readonly createdAt: string;
  readonly createdByName: string;
  readonly expiresAt: string | null;
  readonly revokedAt: string | null;
  readonly lastUsedAt: string | null;
};

export type ApiTokenState = "open" | "expired" | "revoked";

export const API_TOKEN_STATES: Readonly<Record<ApiTokenState, string>> = {
  open: "works",
  expired: "expired",
  revoked: "revoked",
};

/** Whether a token opens anything now, and if not, why. */
export function apiTokenState(token: Pick<ApiToken, "revokedAt" | "expiresAt">, now: Date): ApiTokenState {
  if (token.revokedAt !== null) return "revoked";
  return token.expiresAt === null || new Date(token.expiresAt) <= now ? "expired" : "open";
}
