import type { ReactNode } from "react";

export type EmptyStateProps = {
  readonly title: string;
  /** Why nothing is here, or what will be. */
  readonly children?: ReactNode;
  /** The next thing to do: a button or a link. */
  readonly action?: ReactNode;
};

/** An empty page of the ledger: it says what belongs here and how to begin. */
export function EmptyState({ title, children, action }: EmptyStateProps) {
  return (
    <div className="relative border border-rule bg-sheet">
      <div aria-hidden="true" className="blank-lines absolute inset-0 opacity-60" />
      <div className="relative mx-auto my-9 grid max-w-md justify-items-center gap-2 bg-sheet px-6 py-5 text-center">
        <p className="text-lg font-semibold">{title}</p>
        {children === undefined ? null : <div className="text-sm text-muted">{children}</div>}
        {action === undefined ? null : <div className="mt-2">{action}</div>}
      </div>
    </div>
  );
}
