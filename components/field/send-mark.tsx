import { ArrowUp, Check, Smartphone, TriangleAlert } from "lucide-react";
import { cx } from "@/components/ui/cx";
import type { Draft } from "@/lib/offline/draft";

/** Where something entered is. */
export type Whereabouts = "keeping" | "phone" | "sending" | "sent" | "needs you";

const LOOK = {
  keeping: { word: "Keeping", icon: Smartphone, ink: "text-muted" },
  phone: { word: "Saved on this phone", icon: Smartphone, ink: "text-caution" },
  sending: { word: "Sending", icon: ArrowUp, ink: "text-accent" },
  sent: { word: "Sent", icon: Check, ink: "text-meets" },
  "needs you": { word: "Needs you", icon: TriangleAlert, ink: "text-short" },
} as const;

/** Where an entry is: word and shape. */
export function SendMark({ at, count }: { readonly at: Whereabouts; readonly count?: number }) {
  const { word, icon: Icon, ink } = LOOK[at];
  return (
    <span className={cx("inline-flex items-center gap-1 text-xs font-semibold whitespace-nowrap", ink)}>
      <Icon aria-hidden="true" className="size-4 shrink-0" />
      {word}
      {count === undefined ? null : ` (${count})`}
    </span>
  );
}

/** Where one field of a record is; `null` while it is empty and nobody changed it. */
export function fieldAt(
  draft: Draft | undefined,
  key: string,
  sending: boolean,
  isEmpty: boolean,
): Whereabouts | null {
  const pending = draft?.pending[key];
  if (!pending) return isEmpty ? null : "sent";
  if (pending.held) return "needs you";
  return sending && draft?.upload && key in draft.upload.fields ? "sending" : "phone";
}
