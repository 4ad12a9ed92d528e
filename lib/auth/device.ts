import { unscopedFormerMembership } from "@/lib/db/unscoped/people";
import { asId, isUuid } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { COMPANY_HEADER } from "@/lib/domain/shown-for";
import { AppError, notFound } from "@/lib/errors";
import { makeScope } from "./scope";
import { currentPerson, currentScope } from "./session";
import { refuseOtherPerson, removed, scopeShown } from "./shown-for";

/** How long after leaving a company unsent readings are taken. */
const HAND_OVER_DAYS = 60;

const NOT_THEIRS = "These readings belong to another person. Sign in as that person to send them.";

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
  refuseOtherPerson(person, headers, NOT_THEIRS);
  const wanted = headers.get(COMPANY_HEADER);
  if (wanted === null) {
    const scope = await currentScope();
    if (!scope) throw removed();
    return scope;
  }
  return scopeShown(person, wanted);
}

/**
 * The scope of somebody who hands over what their phone still holds, also after they left the company. For one
 * who left it is that of a tech without a job: nothing can be read through it, and only the hand-over gets it.
 *
 * @returns `null` when nobody is signed in.
 */
export async function handOverScope(headers: Headers): Promise<TenantScope | null> {
  const person = await currentPerson();
  const wanted = headers.get(COMPANY_HEADER);
  if (!person || wanted === null || person.companies.some((one) => one.tenantId === wanted))
    return deviceScope(headers);
  refuseOtherPerson(person, headers, NOT_THEIRS);
  const leftAt = isUuid(wanted)
    ? await unscopedFormerMembership(person.userId, asId<"tenant">(wanted))
    : null;
  if (leftAt === null) throw notFound();
  if (Date.now() - leftAt.getTime() > HAND_OVER_DAYS * 86_400_000) {
    throw new AppError("HAND_OVER_CLOSED", "It is too late to hand readings over. Erase them.");
  }
  const tenantId = asId<"tenant">(wanted);
  return makeScope({ tenantId, userId: person.userId, role: "tech", membershipVersion: 0 });
}
