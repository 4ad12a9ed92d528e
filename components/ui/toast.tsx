"use client";

import { X } from "lucide-react";
import { Toast as RadixToast } from "radix-ui";
import type { ReactNode } from "react";
import { Notice, type NoticeKind } from "./notice";

export type ToastProps = {
  readonly open: boolean;
  readonly onOpenChange: (open: boolean) => void;
  readonly kind: NoticeKind;
  readonly title: string;
  readonly children?: ReactNode;
};

/** A message that comes up at the foot of the screen. A problem stays until it is closed. */
export function Toast({ open, onOpenChange, kind, title, children }: ToastProps) {
  return (
    <RadixToast.Provider
      swipeDirection="right"
      duration={kind === "problem" ? Number.POSITIVE_INFINITY : 8_000}
    >
      <RadixToast.Root open={open} onOpenChange={onOpenChange} className="toast-in relative">
        <RadixToast.Title asChild>
          <div>
            <Notice kind={kind} title={title} className="pr-12">
              {children}
            </Notice>
          </div>
        </RadixToast.Title>
        <RadixToast.Close
          aria-label="Close this message"
          className="absolute top-1 right-1 grid size-11 cursor-pointer place-items-center text-muted hover:text-ink"
        >
          <X aria-hidden="true" className="size-4" />
        </RadixToast.Close>
      </RadixToast.Root>
      <RadixToast.Viewport className="no-print fixed right-4 bottom-4 z-50 w-[min(26rem,calc(100vw-2rem))]" />
    </RadixToast.Provider>
  );
}
