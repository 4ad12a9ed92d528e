import { cookies, headers } from "next/headers";
import { decode } from "next-auth/jwt";
import { cache } from "react";
import { unscopedPerson } from "@/lib/db/unscoped/people";
import { asId, type UserId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { COMPANY_HEADER } from "@/lib/domain/shown-for";
import { env } from "@/lib/env";
import { makeScope } from "./scope";
import { refuseOtherPerson, type SignedInPerson, scopeShown } from "./shown-for";

export const COMPANY_COOKIE = "dewledger-company";

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

const SOMEBODY_ELSE =
  "Somebody else has signed in meanwhile. Nothing was changed. Sign in as yourself, or open this page again.";

/**
 * The scope of this request: the company of the page it comes from, whatever another tab has chosen since;
 * for a page opened anew the chosen company, or the first one. `null` when nobody is signed in.
 *
 * @throws AppError `OTHER_PERSON` when the page was another person's; `REMOVED` or `NOT_FOUND` when its company
 * is not this person's.
 */
export const currentScope = cache(async (): Promise<TenantScope | null> => {
  const person = await currentPerson();
  if (!person) return null;
  const sent = await headers();
  refuseOtherPerson(person, sent, SOMEBODY_ELSE);
  const shown = sent.get(COMPANY_HEADER);
  if (shown !== null) return scopeShown(person, shown);
  const chosen = (await cookies()).get(COMPANY_COOKIE)?.value;
  const company = person.companies.find((one) => one.tenantId === chosen) ?? person.companies[0];
  if (!company) return null;
  return makeScope({ ...company, userId: person.userId });
});

async function claimOfCookie(): Promise<{ readonly userId: UserId; readonly sessionVersion: number } | null> {
  const jar = await cookies();
  // Behind TLS only the cookie that no page without TLS can have planted.
  const name = env().NEXTAUTH_URL.startsWith("https:")
    ? "__Secure-next-auth.session-token"
    : "next-auth.session-token";
  const token = jar.get(name)?.value;
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
