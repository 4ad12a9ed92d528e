import { asId, type UserId } from "@/lib/domain/ids";
import type { Role } from "@/lib/domain/roles";
import type { TenantScope } from "@/lib/domain/scope";
import { AppError, notFound } from "@/lib/errors";
import { appendActivity } from "./activity";
import { type TenantTransaction, withTenant } from "./with-tenant";

export type Member = {
  readonly userId: UserId;
  readonly name: string;
  readonly email: string;
  readonly role: Role;
};
export type OpenInvitation = {
  readonly id: string;
  readonly email: string;
  readonly name: string;
  readonly role: Role;
  readonly expiresAt: string;
};

export function members(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  return {
    list: (): Promise<readonly Member[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.membership.findMany({
          where: { ...own, removedAt: null },
          orderBy: { name: "asc" },
        });
        return rows.map((row) => ({
          userId: asId<"user">(row.userId),
          name: row.name,
          email: row.email,
          role: row.role as Role,
        }));
      }),

    openInvitations: (now: Date): Promise<readonly OpenInvitation[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.invitation.findMany({
          where: { ...own, acceptedAt: null, revokedAt: null, expiresAt: { gt: now } },
          orderBy: { createdAt: "desc" },
        });
        return rows.map((row) => ({
          id: row.id,
          email: row.email,
          name: row.name,
          role: row.role as Role,
          expiresAt: row.expiresAt.toISOString(),
        }));
      }),

    /** Keeps an invitation. Only the hash of its secret is stored. */
    invite: (invitation: {
      readonly email: string;
      readonly name: string;
      readonly role: Role;
      readonly tokenHash: string;
      readonly expiresAt: Date;
    }): Promise<void> =>
      withTenant(scope, async (tx) => {
        const already = await tx.membership.findFirst({
          where: { ...own, email: invitation.email, removedAt: null },
          select: { userId: true },
        });
        if (already) {
          throw new AppError("INVALID_INPUT", "This person is already a member.", {
            fields: [
              {
                field: "email",
                message: "This person is already a member. Change the role in the list instead.",
              },
            ],
          });
        }
        await tx.invitation.updateMany({
          where: { ...own, email: invitation.email, acceptedAt: null, revokedAt: null },
          data: { revokedAt: new Date() },
        });
        const row = await tx.invitation.create({
          data: { ...own, ...invitation, createdBy: scope.userId },
          select: { id: true },
        });
        await appendActivity(tx, scope, {
          action: "member invited",
          entity: "invitation",
          entityId: row.id,
          after: { role: invitation.role },
        });
      }),

    revokeInvitation: (id: string): Promise<void> =>
      withTenant(scope, async (tx) => {
        const changed = await tx.invitation.updateMany({
          where: { ...own, id, acceptedAt: null, revokedAt: null },
          data: { revokedAt: new Date() },
        });
        if (changed.count === 0) throw notFound();
        await appendActivity(tx, scope, {
          action: "invitation withdrawn",
          entity: "invitation",
          entityId: id,
        });
      }),

    changeRole: (userId: UserId, role: Role): Promise<void> =>
      withTenant(scope, async (tx) => {
        const before = await activeMember(tx, scope, userId);
        if (before.role === "owner" && role !== "owner") await assertAnotherOwner(tx, scope, userId);
        await tx.membership.updateMany({
          where: { ...own, userId, removedAt: null },
          data: { role, version: { increment: 1 }, updatedAt: new Date() },
        });
        if (role !== "owner") await endTokens(tx, scope, userId);
        await appendActivity(tx, scope, {
          action: "role changed",
          entity: "membership",
          entityId: userId,
          before: { role: before.role },
          after: { role },
        });
      }),

    /** Ends a membership. The row stays, so that old records keep their author. */
    remove: (userId: UserId): Promise<void> =>
      withTenant(scope, async (tx) => {
        const before = await activeMember(tx, scope, userId);
        if (before.role === "owner") await assertAnotherOwner(tx, scope, userId);
        await tx.membership.updateMany({
          where: { ...own, userId, removedAt: null },
          data: { removedAt: new Date(), version: { increment: 1 }, updatedAt: new Date() },
        });
        await tx.jobAssignment.deleteMany({ where: { ...own, userId } });
        // A link they still hold would let them in again.
        await tx.invitation.updateMany({
          where: { ...own, email: before.email, acceptedAt: null, revokedAt: null },
          data: { revokedAt: new Date() },
        });
        await endTokens(tx, scope, userId);
        await appendActivity(tx, scope, {
          action: "member removed",
          entity: "membership",
          entityId: userId,
          before: { role: before.role },
        });
      }),
  };
}

async function activeMember(
  tx: TenantTransaction,
  scope: TenantScope,
  userId: UserId,
): Promise<{ readonly role: Role; readonly email: string }> {
  const row = await tx.membership.findFirst({
    where: { tenantId: scope.tenantId, userId, removedAt: null },
    select: { role: true, email: true },
  });
  if (!row) throw notFound();
  return { role: row.role as Role, email: row.email };
}

/** What a person's programs held ends with the ownership, and does not come back with it. */
async function endTokens(tx: TenantTransaction, scope: TenantScope, userId: UserId): Promise<void> {
  await tx.apiToken.updateMany({
    where: { tenantId: scope.tenantId, createdBy: userId, revokedAt: null },
    data: { revokedAt: new Date() },
  });
}

/** Two owners removing each other at once wait here, so that a company never loses its last owner. */
async function assertAnotherOwner(tx: TenantTransaction, scope: TenantScope, userId: UserId): Promise<void> {
  await tx.$queryRaw`SELECT user_id FROM membership WHERE tenant_id = ${scope.tenantId}::uuid AND role = 'owner' AND removed_at IS NULL FOR UPDATE`;
  const others = await tx.membership.count({
    where: { tenantId: scope.tenantId, role: "owner", removedAt: null, NOT: { userId } },
  });
  if (others === 0) {
    throw new AppError("INVALID_INPUT", "A company needs an owner. Make someone else owner first.", {
      fields: [{ field: "role", message: "A company needs an owner. Make someone else owner first." }],
    });
  }
}
