import Link from "next/link";
import type { ReactNode } from "react";
import { type BrandLook, BrandMark, BrandStyle } from "./brand";
import type { NavItem } from "./nav-items";
import { NavLinks } from "./nav-links";
import { SkipLink } from "./skip-link";

export type AppShellProps = {
  readonly brand: BrandLook;
  /** From `navFor(role)`. */
  readonly nav: readonly NavItem[];
  /** Where the company's mark leads. */
  readonly homeHref: string;
  /** The form that changes the company, for people who belong to several. */
  readonly companySwitcher?: ReactNode;
  /** Who is signed in, and the way out. */
  readonly userMenu: ReactNode;
  readonly children: ReactNode;
};

/** The office's desk: places at the left behind the margin rule, the page at the right. */
export function AppShell({ brand, nav, homeHref, companySwitcher, userMenu, children }: AppShellProps) {
  return (
    <div className="lg:grid lg:min-h-dvh lg:grid-cols-[14.5rem_minmax(0,1fr)]">
      <BrandStyle accent={brand.accent} />
      <SkipLink />
      <header className="no-print border-rule bg-sunk max-lg:border-b lg:border-r-4 lg:border-double lg:border-r-accent">
        <div className="flex flex-col lg:sticky lg:top-0 lg:h-dvh">
          <div className="flex items-center justify-between gap-3 px-3 py-2 lg:px-4 lg:py-4">
            <Link href={homeHref} className="min-w-0">
              <BrandMark brand={brand} />
            </Link>
            <div className="lg:hidden">{userMenu}</div>
          </div>
          {companySwitcher === undefined ? null : (
            <div className="px-3 pb-2 lg:px-4 lg:pb-4">{companySwitcher}</div>
          )}
          <nav aria-label="Main" data-scroll-region="" className="overflow-x-auto lg:flex-1">
            <NavLinks items={nav} />
          </nav>
          <div className="px-4 py-3 text-sm max-lg:hidden">
            {userMenu}
            <p className="mt-2 text-xs text-muted">Dewledger</p>
          </div>
        </div>
      </header>
      <main id="content" tabIndex={-1} className="min-w-0 px-4 pb-16 outline-none sm:px-6 lg:px-8">
        <div className="mx-auto max-w-[84rem]">{children}</div>
      </main>
    </div>
  );
}
