import { LinkButton } from "./button";

export type PaginationProps = {
  /** What is shown, in words: "51 to 100 of 1,204 jobs". */
  readonly summary: React.ReactNode;
  readonly previousHref: string | null;
  readonly nextHref: string | null;
};

export function Pagination({ summary, previousHref, nextHref }: PaginationProps) {
  return (
    <nav aria-label="Pages" className="no-print flex flex-wrap items-center justify-between gap-3 py-3">
      <p className="text-sm text-muted">{summary}</p>
      <div className="flex gap-2">
        {previousHref === null ? null : (
          <LinkButton href={previousHref} rel="prev">
            Previous
          </LinkButton>
        )}
        {nextHref === null ? null : (
          <LinkButton href={nextHref} rel="next">
            Next
          </LinkButton>
        )}
      </div>
    </nav>
  );
}
