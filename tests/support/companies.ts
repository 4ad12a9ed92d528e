import { unscopedTransaction } from "@/lib/db/unscoped/transaction";
import { asId } from "@/lib/domain/ids";
import type { Role } from "@/lib/domain/roles";
import type { TenantScope } from "@/lib/domain/scope";

let made = 0;

/** A new company with one member, and that member's scope. */
export async function makeCompany(role: Role = "owner"): Promise<TenantScope> {
  const name = `Company ${++made}`;
  const email = `member-${made}-${process.pid}-${Date.now()}@example.com`;
  return unscopedTransaction(async (tx) => {
    const tenant = await tx.tenant.create({ data: { name, timeZone: "America/Chicago" } });
    const user = await tx.user.create({ data: { email, passwordHash: "none: never signs in" } });
    await tx.membership.create({
      data: { tenantId: tenant.id, userId: user.id, name: `Member ${made}`, email, role },
    });
    // Only lib/auth makes scopes; a database test stands in its place.
    const scope = {
      tenantId: asId<"tenant">(tenant.id),
      userId: asId<"user">(user.id),
      role,
      membershipVersion: 1,
    };
    return scope as unknown as TenantScope;
  });
}
