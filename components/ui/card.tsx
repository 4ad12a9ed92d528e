import type { ReactNode } from "react";
import { cx } from "./cx";

export type CardProps = {
  readonly title?: ReactNode;
  /** The level the title takes in the page's outline. */
  readonly level?: 2 | 3;
  /** Beside the title: a link, a badge, a small button. */
  readonly aside?: ReactNode;
  readonly children: ReactNode;
  /** For content that brings its own edges, such as a table. */
  readonly flush?: boolean;
  readonly className?: string;
};

/** A sheet of paper with a ruled head. */
export function Card({ title, level = 2, aside, children, flush = false, className }: CardProps) {
  const Heading = level === 2 ? "h2" : "h3";
  return (
    <section className={cx("min-w-0 border border-rule bg-sheet", className)}>
      {title === undefined && aside === undefined ? null : (
        <header className="flex flex-wrap items-center justify-between gap-x-4 gap-y-1 border-b border-rule px-4 py-2.5">
          {title === undefined ? null : <Heading className="font-semibold">{title}</Heading>}
          {aside}
        </header>
      )}
      <div className={cx(!flush && "p-4")}>{children}</div>
    </section>
  );
}
