import type { ApiAccess, ApiToken } from "@/lib/domain/api-tokens";
import { asId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { notFound } from "@/lib/errors";
import { appendActivity } from "./activity";
import { withTenant } from "./with-tenant";

export type NewApiToken = {
  readonly name: string;
  readonly access: ApiAccess;
  readonly tokenHash: string;
  readonly hint: string;
  readonly expiresAt: Date;
};

/** What a token's scopes are in the database: each by its name, so that there may be finer ones later. */
const SCOPES: Readonly<Record<ApiAccess, readonly string[]>> = { read: ["read"], write: ["read", "write"] };

/** The API tokens of a company. Only the hash of a secret is kept. */
export function apiTokens(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  return {
    /** Every token there ever was, newest first. */
    list: (): Promise<readonly ApiToken[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.apiToken.findMany({
          where: own,
          orderBy: [{ createdAt: "desc" }, { id: "desc" }],
          omit: { tokenHash: true },
          include: { createdByMember: { select: { name: true } } },
        });
        const time = (date: Date | null) => date?.toISOString() ?? null;
        return rows.map((row) => ({
          id: asId<"API token">(row.id),
          name: row.name,
          access: row.scopes.includes("write") ? "write" : "read",
          hint: row.hint,
          createdAt: row.createdAt.toISOString(),
          createdByName: row.createdByMember.name,
          expiresAt: time(row.expiresAt),
          revokedAt: time(row.revokedAt),
          lastUsedAt: time(row.lastUsedAt),
        }));
      }),

    add: ({ access, ...token }: NewApiToken): Promise<void> =>
      withTenant(scope, async (tx) => {
        const row = await tx.apiToken.create({
          data: { ...own, ...token, scopes: [...SCOPES[access]], createdBy: scope.userId },
          select: { id: true },
        });
        await appendActivity(tx, scope, {
          action: "API token made",
          entity: "API token",
          entityId: row.id,
          after: { name: token.name, access, expiresAt: token.expiresAt.toISOString().slice(0, 10) },
        });
      }),

    /** Ends a token at once. One that was revoked already stays as it is. */
    revoke: (id: string): Promise<void> =>
      withTenant(scope, async (tx) => {
        const found = await tx.apiToken.findFirst({
          where: { ...own, id },
          select: { name: true, revokedAt: true },
        });
        if (!found) throw notFound();
        const { count } = await tx.apiToken.updateMany({
          where: { ...own, id, revokedAt: null },
          data: { revokedAt: new Date() },
        });
        if (count === 0) return;
        await appendActivity(tx, scope, {
          action: "API token revoked",
          entity: "API token",
          entityId: id,
          before: { name: found.name },
        });
      }),
  };
}
