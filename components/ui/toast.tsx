"use client";

import { X } from "lucide-react";
import type { ReactNode } from "react";
import { Notice, type NoticeKind } from "./notice";

export type ToastProps = {
  readonly open: boolean;
  readonly onClose: () => void;
  readonly kind: NoticeKind;
  readonly title: string;
  readonly children?: ReactNode;
};

/** A message at the foot of the screen. It stays until it is closed: nobody has to read against a clock. */
export function Toast({ open, onClose, kind, title, children }: ToastProps) {
  return (
    <div className="no-print fixed right-4 bottom-4 z-50 w-[min(26rem,calc(100vw-2rem))]">
      {open ? (
        <div className="toast-in relative">
          <Notice kind={kind} title={title} className="pr-12">
            {children}
          </Notice>
          <button
            type="button"
            aria-label="Close this message"
            onClick={onClose}
            className="absolute top-1 right-1 grid size-11 cursor-pointer place-items-center text-muted hover:text-ink"
          >
            <X aria-hidden="true" className="size-4" />
          </button>
        </div>
      ) : null}
    </div>
  );
}
