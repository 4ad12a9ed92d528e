import { makeApiToken } from "@/lib/auth/api-token";
import { apiTokens } from "@/lib/db/api-tokens";
import { company } from "@/lib/db/company";
import { type ApiToken, type ApiTokenState, apiTokenState, MOST_API_TOKENS } from "@/lib/domain/api-tokens";
import type { TenantScope } from "@/lib/domain/scope";
import { invalidInput } from "@/lib/errors";
import type { MakeApiTokenInput } from "@/lib/schemas/api-token";

export type ApiTokensView = {
  readonly tokens: readonly (ApiToken & { readonly state: ApiTokenState })[];
  readonly timeZone: string;
};

export async function apiTokensView(scope: TenantScope, now = new Date()): Promise<ApiTokensView> {
  const [tokens, { timeZone }] = await Promise.all([apiTokens(scope).list(), company(scope).get()]);
  return { tokens: tokens.map((one) => ({ ...one, state: apiTokenState(one, now) })), timeZone };
}

/** Makes a token. Its text is in this answer and nowhere else. */
export async function addApiToken(
  scope: TenantScope,
  { name, access, days }: MakeApiTokenInput,
  now = new Date(),
): Promise<{ readonly token: string }> {
  const open = (await apiTokens(scope).list()).filter((one) => apiTokenState(one, now) === "open");
  if (open.length >= MOST_API_TOKENS) {
    const message = `There are ${MOST_API_TOKENS} tokens that work. Revoke one that is not needed first.`;
    throw invalidInput([{ field: "name", message }]);
  }
  const { token, tokenHash, hint } = makeApiToken(scope.tenantId);
  const expiresAt = new Date(now.getTime() + Number(days) * 86_400_000);
  await apiTokens(scope).add({ name, access, tokenHash, hint, expiresAt });
  return { token };
}

/** Ends a token at its next request. */
export async function revokeApiToken(
  scope: TenantScope,
  { tokenId }: { readonly tokenId: string },
): Promise<void> {
  await apiTokens(scope).revoke(tokenId);
}
