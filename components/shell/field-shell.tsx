import { ChevronLeft } from "lucide-react";
import Link from "next/link";
import type { ReactNode } from "react";
import { type BrandLook, BrandStyle } from "./brand";
import { SkipLink } from "./skip-link";

export type FieldShellProps = {
  readonly brand: BrandLook;
  readonly title: string;
  /** One line under the title: the address, the step. */
  readonly lead?: ReactNode;
  readonly back?: { readonly href: string; readonly label: string };
  /** Whether what was entered is safe: a `SaveState`. */
  readonly saveState?: ReactNode;
  /** The buttons within the thumb's reach. */
  readonly bottomBar?: ReactNode;
  readonly children: ReactNode;
};

/** The phone in one hand: a short head, large targets, the actions at the bottom edge. */
export function FieldShell({ brand, title, lead, back, saveState, bottomBar, children }: FieldShellProps) {
  return (
    <div className="field-screen mx-auto flex min-h-dvh max-w-xl flex-col">
      <BrandStyle accent={brand.accent} />
      <SkipLink />
      <header className="border-b-3 border-double border-accent bg-sheet px-4 pt-2 pb-3">
        <div className="flex min-h-11 items-center justify-between gap-3 text-sm">
          {back === undefined ? (
            <span className="font-semibold text-accent">{brand.name}</span>
          ) : (
            <Link href={back.href} className="-ml-2 flex min-h-11 items-center gap-1 pr-3 text-accent">
              <ChevronLeft aria-hidden="true" className="size-5" />
              {back.label}
            </Link>
          )}
          {saveState}
        </div>
        <h1 className="text-xl">{title}</h1>
        {lead === undefined ? null : <div className="text-muted">{lead}</div>}
      </header>
      <main id="content" tabIndex={-1} className="flex-1 px-4 py-4 outline-none">
        {children}
      </main>
      {bottomBar === undefined ? null : (
        <footer className="no-print sticky bottom-0 z-10 flex gap-2 border-t border-rule-strong bg-sheet px-4 pt-3 pb-[max(0.75rem,env(safe-area-inset-bottom))] [&>*]:flex-1">
          {bottomBar}
        </footer>
      )}
    </div>
  );
}
