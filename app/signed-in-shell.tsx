import type { ReactNode } from "react";
import { PhoneKey } from "@/components/callbacks/phone-key";
import { CompanySwitcher } from "@/components/people/company-switcher";
import { UserMenu } from "@/components/people/user-menu";
import { AppShell } from "@/components/shell/app-shell";
import { navFor } from "@/components/shell/nav-items";
import { SignInAgain } from "@/components/shell/sign-in-again";
import { TabOwner } from "@/components/shell/tab-owner";
import { currentPerson } from "@/lib/auth/session";
import { may, ROLE_NAMES } from "@/lib/domain/roles";
import { pageScope } from "@/lib/server/page";
import { shellView } from "@/lib/services/shell";
import { chooseCompany } from "./company-choice";

/** The frame of every desk page. The permission itself is checked by each page. */
export async function SignedInShell({ children }: { readonly children: ReactNode }) {
  const scope = await pageScope("job.read");
  const [view, person] = await Promise.all([shellView(scope), currentPerson()]);
  const companies = person?.companies ?? [];
  const own = companies.find((one) => one.tenantId === scope.tenantId);
  return (
    <AppShell
      brand={{ name: view.companyName, accent: view.accent, logoHref: view.logoHref }}
      nav={navFor(scope.role)}
      homeHref="/"
      companySwitcher={
        companies.length > 1 ? (
          <CompanySwitcher
            companies={companies.map((one) => ({ value: one.tenantId, label: one.tenantName }))}
            current={scope.tenantId}
            choose={chooseCompany}
          />
        ) : undefined
      }
      userMenu={<UserMenu name={own?.memberName ?? ""} role={ROLE_NAMES[scope.role]} />}
    >
      <SignInAgain email={person?.email ?? ""} />
      <TabOwner companyId={scope.tenantId} personId={scope.userId} />
      {may(scope.role, "callback.edit") ? <PhoneKey /> : null}
      {children}
    </AppShell>
  );
}
