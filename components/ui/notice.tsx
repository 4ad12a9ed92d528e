import { CircleCheck, CircleX, Info } from "lucide-react";
import type { ReactNode } from "react";
import { cx } from "./cx";

export type NoticeKind = "information" | "done" | "problem";

const LOOK = {
  information: { icon: Info, edge: "border-l-accent", ink: "text-accent" },
  done: { icon: CircleCheck, edge: "border-l-meets", ink: "text-meets" },
  problem: { icon: CircleX, edge: "border-l-short", ink: "text-short" },
} as const;

export type NoticeProps = {
  readonly kind: NoticeKind;
  readonly title: string;
  readonly children?: ReactNode;
  /** A button or link that helps. */
  readonly action?: ReactNode;
  readonly className?: string;
};

/** A message about what just happened. A problem is read out at once, anything else politely. */
export function Notice({ kind, title, children, action, className }: NoticeProps) {
  const { icon: Icon, edge, ink } = LOOK[kind];
  return (
    <div
      role={kind === "problem" ? "alert" : "status"}
      className={cx("flex gap-3 border border-l-4 border-rule bg-sheet p-3", edge, className)}
    >
      <Icon aria-hidden="true" className={cx("mt-0.5 size-5 shrink-0", ink)} />
      <div className="min-w-0 flex-1 text-sm">
        <p className="font-semibold">{title}</p>
        {children === undefined ? null : <div className="mt-0.5">{children}</div>}
        {action === undefined ? null : <div className="mt-2">{action}</div>}
      </div>
    </div>
  );
}
