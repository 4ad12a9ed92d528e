import { asId, type TenantId, type UserId } from "@/lib/domain/ids";
import type { Role } from "@/lib/domain/roles";
import { AppError, notFound } from "@/lib/errors";
import { database } from "../client";
import { type UnscopedTransaction, unscopedTransaction } from "./transaction";

export type PersonCompany = {
  readonly tenantId: TenantId;
  readonly tenantName: string;
  readonly memberName: string;
  readonly role: Role;
  readonly membershipVersion: number;
};

type PersonRow = {
  readonly userId: UserId;
  readonly email: string;
  readonly sessionVersion: number;
  readonly companies: readonly PersonCompany[];
};

/** What sign-in needs to know about an address. */
export function unscopedSignInUser(email: string) {
  return unscopedTransaction((tx) =>
    tx.user.findUnique({ where: { email }, select: { id: true, passwordHash: true, sessionVersion: true } }),
  );
}

/** A person and the open companies they are a member of now, by name. One statement: it stands before every request. */
export async function unscopedPerson(userId: UserId): Promise<PersonRow | null> {
  const [person] = await database().$queryRaw<readonly PersonRow[]>`
    SELECT user_id AS "userId", email, session_version AS "sessionVersion", companies
    FROM person_now(${userId}::uuid)`;
  return person ?? null;
}

/** When a person left an open company they once belonged to; `null` when they never did or still do. */
export function unscopedFormerMembership(userId: UserId, tenantId: TenantId): Promise<Date | null> {
  return unscopedTransaction(async (tx) => {
    const row = await tx.membership.findFirst({
      where: { userId, tenantId, removedAt: { not: null }, tenant: { closedAt: null } },
      select: { removedAt: true },
    });
    return row?.removedAt ?? null;
  });
}

/** The stored hash of a person's password, and the address it is counted under. */
export function unscopedPasswordOf(who: { readonly email: string } | { readonly userId: UserId }) {
  const where = "email" in who ? { email: who.email } : { id: who.userId };
  return unscopedTransaction((tx) =>
    tx.user.findUnique({ where, select: { email: true, passwordHash: true } }),
  );
}

/** Sets a password, ends every session of the person and tells it on the trail of each of their companies. */
export async function unscopedSetPassword(userId: UserId, passwordHash: string): Promise<void> {
  await unscopedTransaction(async (tx) => {
    await tx.user.update({
      where: { id: userId },
      data: { passwordHash, sessionVersion: { increment: 1 }, updatedAt: new Date() },
      select: { id: true },
    });
    const companies = await tx.membership.findMany({
      where: { userId, removedAt: null, tenant: { closedAt: null } },
      // In one order, so that two people of the same companies cannot wait for each other.
      orderBy: { tenantId: "asc" },
      select: { tenantId: true },
    });
    for (const { tenantId } of companies)
      await tellOnTrail(tx, tenantId, userId, { action: "password changed" });
  });
}

/** The open invitation a link's hash names, or `null`. */
export function unscopedInvitation(tokenHash: string, now: Date) {
  return unscopedTransaction(async (tx) => {
    const found = await openInvitation(tx, tokenHash, now);
    if (!found) return null;
    const known = await tx.user.findUnique({ where: { email: found.email }, select: { id: true } });
    const tenant = await tx.tenant.findUniqueOrThrow({
      where: { id: found.tenantId },
      select: { name: true },
    });
    return {
      companyName: tenant.name,
      email: found.email,
      role: found.role as Role,
      personIsKnown: known !== null,
    };
  });
}

/** Uses the invitation up and makes (or renews) the membership, together. */
export function unscopedAcceptInvitation(
  tokenHash: string,
  newPasswordHash: string | null,
  now: Date,
): Promise<void> {
  return unscopedTransaction(async (tx) => {
    const found = await openInvitation(tx, tokenHash, now);
    if (!found) throw notFound();
    // Of two uses, or a use and a withdrawal, at the same moment only one finds the invitation still open.
    const used = await tx.invitation.updateMany({
      where: { tenantId: found.tenantId, tokenHash, acceptedAt: null, revokedAt: null },
      data: { acceptedAt: now },
    });
    if (used.count !== 1) throw notFound();
    if (newPasswordHash !== null && (await userIdOf(tx, found.email)) !== null) throw hasPasswordNow();
    const userId = await personFor(tx, found.email, newPasswordHash);
    const before = await tx.membership.findFirst({
      where: { tenantId: found.tenantId, userId },
      select: { version: true, removedAt: true },
    });
    // Two invitations written in the same moment: whoever is in already changes no role by the second.
    if (before?.removedAt === null) throw notFound();
    const data = { name: found.name, email: found.email, role: found.role };
    if (before) {
      await tx.membership.updateMany({
        where: { tenantId: found.tenantId, userId },
        data: { ...data, removedAt: null, version: { increment: 1 }, updatedAt: now },
      });
    } else {
      await tx.membership.createMany({ data: { ...data, tenantId: found.tenantId, userId } });
    }
    await tellOnTrail(tx, found.tenantId, userId, { action: "member joined", after: { role: found.role } });
  });
}

/** What a member did to their own membership or account: from here on the transaction is theirs, inside the company. */
async function tellOnTrail(
  tx: UnscopedTransaction,
  tenantId: string,
  userId: string,
  told: { readonly action: string; readonly after?: { readonly role: string } },
) {
  await tx.$queryRaw`SELECT set_config('role', 'app_user', true), set_config('app.tenant', ${tenantId}, true)`;
  await tx.activity.createMany({
    data: { tenantId, actorId: userId, entity: "membership", entityId: userId, ...told },
  });
}

/** Makes a company with its first owner: how a deployment and the demo begin. */
export function unscopedFoundCompany(input: {
  readonly companyName: string;
  readonly timeZone: string;
  readonly owner: { readonly email: string; readonly name: string; readonly passwordHash: string };
}): Promise<{ readonly tenantId: TenantId; readonly userId: UserId }> {
  return unscopedTransaction(async (tx) => {
    const id = crypto.randomUUID();
    await tx.tenant.createMany({ data: { id, name: input.companyName, timeZone: input.timeZone } });
    const userId = await personFor(tx, input.owner.email, input.owner.passwordHash);
    await tx.membership.createMany({
      data: { tenantId: id, userId, name: input.owner.name, email: input.owner.email, role: "owner" },
    });
    return { tenantId: asId<"tenant">(id), userId: asId<"user">(userId) };
  });
}

async function personFor(
  tx: UnscopedTransaction,
  email: string,
  newPasswordHash: string | null,
): Promise<string> {
  const known = await userIdOf(tx, email);
  if (known !== null) return known;
  if (newPasswordHash === null) throw notFound();
  const id = crypto.randomUUID();
  const made = await tx.user.createMany({
    data: { id, email, passwordHash: newPasswordHash },
    skipDuplicates: true,
  });
  if (made.count === 0) throw hasPasswordNow();
  return id;
}

async function userIdOf(tx: UnscopedTransaction, email: string): Promise<string | null> {
  return (await tx.user.findUnique({ where: { email }, select: { id: true } }))?.id ?? null;
}

/** They joined another company while this page stood open: what was chosen here is not their password. */
function hasPasswordNow(): AppError {
  const message = "You have chosen a password elsewhere meanwhile. Open the link again and enter that one.";
  return new AppError("CONFLICT", message, { fields: [{ field: "password", message }] });
}

async function openInvitation(tx: UnscopedTransaction, tokenHash: string, now: Date) {
  return tx.invitation.findFirst({
    where: { tokenHash, acceptedAt: null, revokedAt: null, expiresAt: { gt: now } },
    select: { tenantId: true, email: true, name: true, role: true },
  });
}
