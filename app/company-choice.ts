"use server";

import { cookies } from "next/headers";
import { COMPANY_COOKIE, currentPerson } from "@/lib/auth/session";
import { env } from "@/lib/env";
import { chooseCompanySchema } from "@/lib/schemas/people";

/**
 * Remembers which of their companies a person works for now. The cookie is a wish: every request checks
 * it against the memberships, so another company's id in it changes nothing.
 */
export async function chooseCompany(tenantId: string): Promise<void> {
  const parsed = chooseCompanySchema.safeParse({ tenantId });
  const person = await currentPerson();
  const chosen = person?.companies.find((one) => parsed.success && one.tenantId === parsed.data.tenantId);
  if (!chosen) return;
  (await cookies()).set(COMPANY_COOKIE, chosen.tenantId, {
    httpOnly: true,
    secure: env().NEXTAUTH_URL.startsWith("https:"),
    sameSite: "lax",
    path: "/",
    maxAge: 31_536_000,
  });
}
