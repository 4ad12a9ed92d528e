import Link from "next/link";
import type { ReactNode } from "react";
import { cx } from "./cx";

export type TabLink = {
  readonly href: string;
  readonly label: string;
  readonly current: boolean;
  /** After the label: a verdict's shape, a count. */
  readonly mark?: ReactNode;
};

/** Index tabs along the top of a sheet. They are links: each has its own address. */
export function TabLinks({ label, tabs }: { readonly label: string; readonly tabs: readonly TabLink[] }) {
  return (
    <nav aria-label={label} data-scroll-region="" className="no-print -mx-1 overflow-x-auto px-1 pt-1">
      <ul className="flex min-w-max border-b border-rule-strong">
        {tabs.map((tab) => (
          <li key={tab.href}>
            <Link
              href={tab.href}
              aria-current={tab.current ? "page" : undefined}
              className={cx(
                "-mb-px flex min-h-11 items-center gap-1 border border-b-0 px-1.5 text-sm 2xl:px-2.5",
                tab.current
                  ? "border-rule-strong bg-sheet font-semibold text-ink shadow-[inset_0_3px_0_var(--accent)]"
                  : "border-transparent text-muted hover:text-ink hover:underline",
              )}
            >
              {tab.label}
              {tab.mark}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
