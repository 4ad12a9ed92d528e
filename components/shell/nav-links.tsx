"use client";

import {
  BookOpen,
  Building2,
  CalendarCheck,
  ChartNoAxesColumn,
  ClipboardList,
  PhoneIncoming,
  Radio,
  Scale,
} from "lucide-react";
import Link from "next/link";
import { usePathname } from "next/navigation";
import { cx } from "../ui/cx";
import type { NavItem } from "./nav-items";

const ICONS = {
  today: CalendarCheck,
  startups: Radio,
  jobs: ClipboardList,
  callbacks: PhoneIncoming,
  across: ChartNoAxesColumn,
  catalog: BookOpen,
  rules: Scale,
  company: Building2,
} as const;

/** The main places. The one that is open is marked by weight, edge and `aria-current`. */
export function NavLinks({ items }: { readonly items: readonly NavItem[] }) {
  const path = usePathname();
  return (
    <ul className="flex gap-x-1 lg:flex-col lg:gap-0">
      {items.map((item) => {
        const Icon = ICONS[item.icon];
        const here = path === item.href || path.startsWith(`${item.href}/`);
        return (
          <li key={item.href}>
            <Link
              href={item.href}
              aria-current={here ? (path === item.href ? "page" : "true") : undefined}
              className={cx(
                "flex min-h-11 items-center gap-2.5 px-3 whitespace-nowrap lg:px-4",
                here
                  ? "bg-sheet font-semibold shadow-[inset_0_-3px_0_var(--accent)] lg:shadow-[inset_4px_0_0_var(--accent)]"
                  : "text-muted hover:text-ink hover:underline",
              )}
            >
              <Icon aria-hidden="true" className={cx("size-4.5 shrink-0", here && "text-accent")} />
              {item.label}
            </Link>
          </li>
        );
      })}
    </ul>
  );
}
