import { unscopedOpenCompanies } from "@/lib/db/unscoped/companies";
import { unscopedPerson } from "@/lib/db/unscoped/people";
import { asId, type TenantId, type UserId } from "@/lib/domain/ids";
import type { Role } from "@/lib/domain/roles";
import type { TenantScope } from "@/lib/domain/scope";

type Verified = {
  readonly tenantId: TenantId;
  readonly userId: UserId;
  readonly role: Role;
  readonly membershipVersion: number;
  readonly tokenName?: string;
};

/** Makes the proof of membership. Call it only with facts just read from the database. */
export function makeScope({ tenantId, userId, role, membershipVersion, tokenName }: Verified): TenantScope {
  const token = tokenName === undefined ? {} : { tokenName };
  return { tenantId, userId, role, membershipVersion, ...token } as TenantScope;
}

/** The scope of a member outside a request: the demo's seed, background work, tests. `null` when not a member. */
export async function scopeOfMember(userId: string, tenantId: string): Promise<TenantScope | null> {
  const person = await unscopedPerson(asId<"user">(userId));
  const company = person?.companies.find((one) => one.tenantId === tenantId);
  return person && company ? makeScope({ ...company, userId: person.userId }) : null;
}

/** The scope of the company's own background work: an owner's. `null` when the company is closed or has none. */
export async function scopeOfCompany(tenantId: string): Promise<TenantScope | null> {
  const [found] = await unscopedOpenCompanies({ tenantId });
  return found ? scopeOfMember(found.ownerId, found.tenantId) : null;
}

/** The scopes of every open company's own background work. */
export async function scopesOfCompanies(): Promise<readonly TenantScope[]> {
  const scopes: TenantScope[] = [];
  for (const { ownerId, tenantId } of await unscopedOpenCompanies()) {
    const scope = await scopeOfMember(ownerId, tenantId);
    if (scope) scopes.push(scope);
  }
  return scopes;
}
