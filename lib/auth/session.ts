import { cookies } from "next/headers";
import { decode } from "next-auth/jwt";
import { cache } from "react";
import { unscopedPerson } from "@/lib/db/unscoped/people";
import { asId, type TenantId, type UserId } from "@/lib/domain/ids";
import type { Role } from "@/lib/domain/roles";
import type { TenantScope } from "@/lib/domain/scope";
import { env } from "@/lib/env";
import { makeScope } from "./scope";

export const COMPANY_COOKIE = "dewledger-company";

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
 * The person of this request, or `null`. The cookie is only a claim: the database decides, once a
 * request, so a removed member or a changed password ends every session at its next step.
 */
export const currentPerson = cache(async (): Promise<SignedInPerson | null> => {
  const claim = await claimOfCookie();
  if (!claim) return null;
  const person = await unscopedPerson(claim.userId);
  if (!person || person.sessionVersion !== claim.sessionVersion) return null;
  return { userId: person.userId, email: person.email, companies: person.companies };
});

/** The scope of this request: the chosen company, or the first one. `null` when nobody is signed in. */
export const currentScope = cache(async (): Promise<TenantScope | null> => {
  const person = await currentPerson();
  if (!person) return null;
  const chosen = (await cookies()).get(COMPANY_COOKIE)?.value;
  const company = person.companies.find((one) => one.tenantId === chosen) ?? person.companies[0];
  if (!company) return null;
  return makeScope({ ...company, userId: person.userId });
});

async function claimOfCookie(): Promise<{ readonly userId: UserId; readonly sessionVersion: number } | null> {
  const jar = await cookies();
  const token =
    jar.get("__Secure-next-auth.session-token")?.value ?? jar.get("next-auth.session-token")?.value;
  if (!token) return null;
  try {
    const claim = await decode({ token, secret: env().NEXTAUTH_SECRET });
    if (!claim?.userId || claim.sessionVersion === undefined) return null;
    return { userId: asId<"user">(claim.userId), sessionVersion: claim.sessionVersion };
  } catch {
    // A cookie of another secret or a damaged one is the same as none.
    return null;
  }
}
