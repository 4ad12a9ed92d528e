import Link from "next/link";
import type { ReactNode } from "react";

export type Crumb = { readonly href: string; readonly label: string };

export type PageHeaderProps = {
  readonly title: ReactNode;
  /** The way here, without the page itself. */
  readonly crumbs?: readonly Crumb[];
  /** One line under the title: customer, address, dates. */
  readonly lead?: ReactNode;
  /** Beside the title: a verdict, a badge. */
  readonly mark?: ReactNode;
  /** What can be done with the whole page. */
  readonly actions?: ReactNode;
};

export function PageHeader({ title, crumbs = [], lead, mark, actions }: PageHeaderProps) {
  return (
    <header className="mb-5 border-b-3 border-double border-rule-strong pt-5 pb-4">
      {crumbs.length === 0 ? null : (
        <nav aria-label="Breadcrumb" className="no-print mb-1 text-sm">
          <ol className="flex flex-wrap gap-x-1.5">
            {crumbs.map((crumb) => (
              <li key={crumb.href} className="flex gap-x-1.5 text-muted">
                <Link href={crumb.href} className="py-0.5 hover:text-ink hover:underline">
                  {crumb.label}
                </Link>
                <span aria-hidden="true" className="py-0.5">
                  /
                </span>
              </li>
            ))}
          </ol>
        </nav>
      )}
      <div className="flex flex-wrap items-start justify-between gap-x-6 gap-y-3">
        <div className="min-w-0">
          <div className="flex flex-wrap items-center gap-x-3 gap-y-1">
            <h1 className="text-xl tracking-[-0.01em] sm:text-2xl">{title}</h1>
            {mark}
          </div>
          {lead === undefined ? null : <div className="mt-1 text-muted">{lead}</div>}
        </div>
        {actions === undefined ? null : <div className="no-print flex flex-wrap gap-2">{actions}</div>}
      </div>
    </header>
  );
}
