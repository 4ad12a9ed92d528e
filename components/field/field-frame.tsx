import { ChevronLeft } from "lucide-react";
import type { ReactNode } from "react";
import { BrandStyle } from "@/components/shell/brand";
import { SkipLink } from "@/components/shell/skip-link";

type Props = {
  readonly accent: string | null;
  readonly title: string;
  /** One line under the title: the address, the step. */
  readonly lead?: ReactNode;
  readonly back: { readonly label: string; readonly go: () => void } | null;
  readonly brand: string;
  /** Whether what was entered is safe. */
  readonly sendState: ReactNode;
  /** The buttons within the thumb's reach. */
  readonly bottomBar?: ReactNode;
  readonly children: ReactNode;
};

/** The phone in one hand: a short head, large targets, the actions at the bottom edge. */
export function FieldFrame({ accent, title, lead, back, brand, sendState, bottomBar, children }: Props) {
  return (
    <div className="field-screen mx-auto flex min-h-dvh max-w-xl flex-col">
      <BrandStyle accent={accent} />
      <SkipLink />
      <header className="border-b-3 border-double border-accent bg-sheet px-4 pt-1 pb-2">
        <div className="flex min-h-11 items-center justify-between gap-3 text-sm">
          {back === null ? (
            <span className="font-semibold text-accent">{brand}</span>
          ) : (
            <button
              type="button"
              onClick={back.go}
              className="-ml-2 flex min-h-11 min-w-0 items-center gap-1 pr-3 text-left text-accent"
            >
              <ChevronLeft aria-hidden="true" className="size-5 shrink-0" />
              <span className="truncate">{back.label}</span>
            </button>
          )}
          {sendState}
        </div>
        <h1 className="text-xl">{title}</h1>
        {lead === undefined ? null : <div className="text-sm text-muted">{lead}</div>}
      </header>
      <main id="content" tabIndex={-1} className="flex-1 px-4 py-4 outline-none">
        {children}
      </main>
      {bottomBar === undefined ? null : (
        <footer className="no-print sticky bottom-0 z-10 border-t border-rule-strong bg-sheet px-4 pt-2 pb-[max(0.5rem,env(safe-area-inset-bottom))]">
          {bottomBar}
        </footer>
      )}
    </div>
  );
}
