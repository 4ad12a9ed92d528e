import { randomUUID } from "node:crypto";
import { scopeOfMember } from "@/lib/auth/scope";
import { unscopedTransaction } from "@/lib/db/unscoped/transaction";
import type { Role } from "@/lib/domain/roles";
import type { TenantScope } from "@/lib/domain/scope";

export type Crew = Readonly<Record<"owner" | "office" | "tech" | "otherTech", TenantScope>>;

/** A company with an owner, an office manager and two techs, each with the scope `lib/auth` gives. */
export async function makeCrew(): Promise<Crew> {
  const tenantId = await unscopedTransaction(async (tx) => {
    const id = randomUUID();
    await tx.tenant.createMany({ data: { id, name: `Crew ${id.slice(0, 8)}`, timeZone: "America/Chicago" } });
    return id;
  });
  const [owner, office, tech, otherTech] = [
    await addMember(tenantId, "owner"),
    await addMember(tenantId, "office"),
    await addMember(tenantId, "tech"),
    await addMember(tenantId, "tech"),
  ];
  return { owner, office, tech, otherTech };
}

/** One more member, who never signs in with a password. */
export async function addMember(tenantId: string, role: Role): Promise<TenantScope> {
  const email = `${role}-${randomUUID()}@example.com`;
  const userId = await unscopedTransaction(async (tx) => {
    const user = await tx.user.create({ data: { email, passwordHash: "none" }, select: { id: true } });
    await tx.membership.createMany({
      data: { tenantId, userId: user.id, name: `${role} ${email.slice(-17, -12)}`, email, role },
    });
    return user.id;
  });
  return given(await scopeOfMember(userId, tenantId));
}

/** The value, or a failed test where there is none. */
export function given<T>(value: T | null | undefined): T {
  if (value === null || value === undefined) throw new Error("A value that the test needs is missing.");
  return value;
}
