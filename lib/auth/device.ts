import { unscopedFormerMembership } from "@/lib/db/unscoped/people";
import { COMPANY_HEADER, PERSON_HEADER } from "@/lib/domain/field-bundle";
import { asId, isUuid } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { AppError, notFound } from "@/lib/errors";
import { makeScope } from "./scope";
import { currentPerson, currentScope, type SignedInPerson } from "./session";

/**
 * The scope of a phone's request. A phone may hold data of yesterday's person or company: it says whose,
 * and nothing passes when that is not who is signed in now.
 *
 * @returns `null` when nobody is signed in.
 * @throws AppError `OTHER_PERSON`; `REMOVED` when the person left that company, which tells the phone to erase.
 */
export async function deviceScope(headers: Headers): Promise<TenantScope | null> {
  const person = await currentPerson();
  if (!person) return null;
  refuseOtherPerson(person, headers);
  const wanted = headers.get(COMPANY_HEADER);
  if (wanted === null) {
    const scope = await currentScope();
    if (!scope) throw removed();
    return scope;
  }
  const company = person.companies.find((one) => one.tenantId === wanted);
  if (company) return makeScope({ ...company, userId: person.userId });
  if (await leftCompany(person, wanted)) throw removed();
  throw notFound();
}

/** Refuses what one person's phone still holds while another person is signed in. */
export function refuseOtherPerson(person: SignedInPerson, headers: Headers): void {
  const holder = headers.get(PERSON_HEADER);
  if (holder !== null && holder !== person.userId) {
    throw new AppError(
      "OTHER_PERSON",
      "These readings belong to another person. Sign in as that person to send them.",
    );
  }
}

export async function leftCompany(person: SignedInPerson, tenantId: string): Promise<boolean> {
  return (
    isUuid(tenantId) && (await unscopedFormerMembership(person.userId, asId<"tenant">(tenantId))) !== null
  );
}

function removed(): AppError {
  return new AppError("REMOVED", "You are not a member of this company any more.");
}
