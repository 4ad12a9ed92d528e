import { unscopedFormerMembership } from "@/lib/db/unscoped/people";
import { asId, isUuid, type TenantId, type UserId } from "@/lib/domain/ids";
import type { Role } from "@/lib/domain/roles";
import type { TenantScope } from "@/lib/domain/scope";
import { PERSON_HEADER } from "@/lib/domain/shown-for";
import { AppError, notFound } from "@/lib/errors";
import { makeScope } from "./scope";

export type SignedInPerson = {
  readonly userId: UserId;
  readonly email: string;
  /** The companies this person belongs to now, by name. */
  readonly companies: readonly {
    readonly tenantId: TenantId;
    readonly tenantName: string;
    readonly memberName: string;
    readonly role: Role;
    readonly membershipVersion: number;
  }[];
};

/**
 * The scope of the company that a phone or a tab names as the one whose data it shows.
 *
 * @throws AppError `REMOVED` when the person left that company, `NOT_FOUND` when they never were in it.
 */
export async function scopeShown(person: SignedInPerson, tenantId: string): Promise<TenantScope> {
  const company = person.companies.find((one) => one.tenantId === tenantId);
  if (company) return makeScope({ ...company, userId: person.userId });
  if (await leftCompany(person, tenantId)) throw removed();
  throw notFound();
}

/** Refuses what belongs to one person while another is signed in. */
export function refuseOtherPerson(person: SignedInPerson, headers: Headers, message: string): void {
  const holder = headers.get(PERSON_HEADER);
  if (holder !== null && holder !== person.userId) throw new AppError("OTHER_PERSON", message);
}

async function leftCompany(person: SignedInPerson, tenantId: string): Promise<boolean> {
  return (
    isUuid(tenantId) && (await unscopedFormerMembership(person.userId, asId<"tenant">(tenantId))) !== null
  );
}

export function removed(): AppError {
  return new AppError("REMOVED", "You are not a member of this company any more.");
}
