import type { ApiAccess } from "@/lib/domain/api-tokens";
import { asId, type TenantId, type UserId } from "@/lib/domain/ids";
import { unscopedTransaction } from "./transaction";

export type KnownToken = {
  readonly tokenId: string;
  readonly tenantId: TenantId;
  readonly userId: UserId;
  readonly membershipVersion: number;
  readonly name: string;
  readonly access: ApiAccess;
};

/** How exactly a list says when a token was last used: a call a second is not a write a second. */
const USED_EVERY_MS = 60_000;

/** The open token with this hash in an open company, made by somebody who is an owner of it now, or `null`. */
export function unscopedApiToken(
  { tenantId, tokenHash }: { readonly tenantId: string; readonly tokenHash: string },
  now: Date,
): Promise<KnownToken | null> {
  return unscopedTransaction(async (tx) => {
    const row = await tx.apiToken.findFirst({
      where: {
        tenantId,
        tokenHash,
        revokedAt: null,
        expiresAt: { gt: now },
        createdByMember: { role: "owner", removedAt: null, tenant: { closedAt: null } },
      },
      select: {
        id: true,
        name: true,
        scopes: true,
        createdBy: true,
        createdByMember: { select: { version: true } },
      },
    });
    return (
      row && {
        tokenId: row.id,
        tenantId: asId<"tenant">(tenantId),
        userId: asId<"user">(row.createdBy),
        membershipVersion: row.createdByMember.version,
        name: row.name,
        access: row.scopes.includes("write") ? "write" : "read",
      }
    );
  });
}

/** Notes when a token was used, to the minute. */
export function unscopedNoteTokenUsed(
  { tenantId, tokenId }: Pick<KnownToken, "tenantId" | "tokenId">,
  now: Date,
): Promise<void> {
  const before = new Date(now.getTime() - USED_EVERY_MS);
  return unscopedTransaction(async (tx) => {
    await tx.apiToken.updateMany({
      where: { tenantId, id: tokenId, OR: [{ lastUsedAt: null }, { lastUsedAt: { lt: before } }] },
      data: { lastUsedAt: now },
    });
  });
}
