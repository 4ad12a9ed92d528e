import { company } from "@/lib/db/company";
import type { Role } from "@/lib/domain/roles";
import type { TenantScope } from "@/lib/domain/scope";

export type ShellView = {
  readonly companyName: string;
  readonly accent: string | null;
  readonly logoHref: string | null;
  readonly role: Role;
};

/** What frames every page: whose company it is and how it looks. */
export async function shellView(scope: TenantScope): Promise<ShellView> {
  const [own, brand] = await Promise.all([company(scope).get(), company(scope).brand()]);
  return {
    companyName: brand?.displayName ?? own.name,
    accent: brand?.accentColor ?? null,
    logoHref: brand?.logo ? `/api/brand/logo?v=${brand.logo.sha256.slice(0, 12)}` : null,
    role: scope.role,
  };
}
