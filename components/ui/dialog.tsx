"use client";

import { X } from "lucide-react";
import { Dialog as RadixDialog } from "radix-ui";
import type { ReactNode } from "react";

export type DialogProps = {
  readonly title: string;
  /** One sentence on what this is for. */
  readonly description?: ReactNode;
  /** The button that opens it. Leave out when `open` is given. */
  readonly trigger?: ReactNode;
  readonly open?: boolean;
  readonly onOpenChange?: (open: boolean) => void;
  readonly children: ReactNode;
};

/** A sheet over the page. Escape and the cross close it; focus returns to what opened it. */
export function Dialog({ title, description, trigger, open, onOpenChange, children }: DialogProps) {
  return (
    <RadixDialog.Root open={open} onOpenChange={onOpenChange}>
      {trigger === undefined ? null : <RadixDialog.Trigger asChild>{trigger}</RadixDialog.Trigger>}
      <RadixDialog.Portal>
        <RadixDialog.Overlay className="fixed inset-0 z-40 bg-[#0d0c0a]/55" />
        <RadixDialog.Content
          className="fixed top-1/2 left-1/2 z-50 max-h-[90dvh] w-[min(36rem,calc(100vw-1.5rem))] -translate-x-1/2 -translate-y-1/2 overflow-auto border border-rule-strong bg-sheet"
          {...(description === undefined ? { "aria-describedby": undefined } : {})}
        >
          <header className="flex items-start justify-between gap-4 border-b-3 border-double border-rule-strong py-1.5 pr-1.5 pl-5">
            <div className="py-1.5">
              <RadixDialog.Title className="text-lg font-semibold">{title}</RadixDialog.Title>
              {description === undefined ? null : (
                <RadixDialog.Description className="text-sm text-muted">
                  {description}
                </RadixDialog.Description>
              )}
            </div>
            <RadixDialog.Close
              aria-label="Close"
              className="grid size-11 shrink-0 cursor-pointer place-items-center text-muted hover:text-ink"
            >
              <X aria-hidden="true" className="size-5" />
            </RadixDialog.Close>
          </header>
          <div className="p-5">{children}</div>
        </RadixDialog.Content>
      </RadixDialog.Portal>
    </RadixDialog.Root>
  );
}

/** Closes the dialog it stands in. Wraps one button. */
export function DialogClose({ children }: { readonly children: ReactNode }) {
  return <RadixDialog.Close asChild>{children}</RadixDialog.Close>;
}
