import Link from "next/link";
import type { Finding } from "@/lib/engineering/findings";
import { cx } from "../ui/cx";
import { Quantity } from "../ui/quantity";
import { BasisLine } from "./basis-line";
import { FindingWords } from "./finding-words";
import { VerdictMark, verdictEdge } from "./verdict-mark";

export type FindingCardProps = {
  readonly finding: Finding;
  /** Where the rule is explained. Left out: the rule's id is plain text. */
  readonly ruleHref?: string;
  /** Level of its title in the page's outline. */
  readonly level?: 2 | 3 | 4;
  /** Its numbers folded even where it needs eyes: among many only the words are read first. */
  readonly folded?: boolean;
};

/** One checked statement, with everything needed to believe it or to contest it. */
export function FindingCard({ finding, ruleHref, level = 4, folded = false }: FindingCardProps) {
  const Title = `h${level}` as const;
  return (
    <article className={cx("border border-l-4 border-rule bg-sheet px-4 py-3", verdictEdge(finding.verdict))}>
      <div className="flex flex-wrap items-start justify-between gap-x-3 gap-y-1">
        <Title className="font-semibold">{finding.title}</Title>
        <VerdictMark verdict={finding.verdict} />
      </div>
      <FindingWords finding={finding} />
      <details className="mt-2 text-xs" open={!folded && needsEyes(finding.verdict)}>
        <summary className="cursor-pointer text-muted">Numbers and basis</summary>
        {finding.figures.length === 0 ? null : <Figures finding={finding} />}
        <p className="mt-2 border-t border-rule pt-1.5 text-muted">
          <BasisLine basis={finding.basis} />
          {finding.binding ? null : " This rule informs; it does not fail a job by itself."}{" "}
          {ruleHref === undefined ? (
            <span className="break-all">{finding.ruleId}</span>
          ) : (
            <Link href={ruleHref} className="text-link break-all">
              {finding.ruleId}
            </Link>
          )}
        </p>
      </details>
    </article>
  );
}

/** What is fine stays folded, so that the one thing that is not stands out. */
function needsEyes(verdict: Finding["verdict"]): boolean {
  return verdict === "falls short" || verdict === "can't tell";
}

function Figures({ finding }: { readonly finding: Finding }) {
  return (
    <dl className="mt-2 grid grid-cols-[repeat(auto-fill,minmax(9.5rem,1fr))] gap-x-4 gap-y-1.5">
      {finding.figures.map((figure) => (
        <div key={figure.label} className="border-t border-rule pt-1">
          <dt className="text-xs text-muted">{figure.label}</dt>
          <dd className="font-semibold">
            <Quantity {...figure} className="[&>span]:font-normal" />
          </dd>
        </div>
      ))}
    </dl>
  );
}
