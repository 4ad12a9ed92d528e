import type { ReactNode } from "react";
import { cx } from "./cx";

const TONES = {
  plain: "border-rule-strong text-ink",
  accent: "border-accent text-accent",
  muted: "border-rule text-muted",
  caution: "border-caution bg-caution-tint text-caution",
} as const;

export type BadgeProps = { readonly children: ReactNode; readonly tone?: keyof typeof TONES };

/** A short word about a thing's state. For a verdict use `VerdictMark`. */
export function Badge({ children, tone = "plain" }: BadgeProps) {
  return (
    <span
      className={cx(
        "inline-block rounded-sm border px-1.5 text-xs font-semibold whitespace-nowrap",
        TONES[tone],
      )}
    >
      {children}
    </span>
  );
}
