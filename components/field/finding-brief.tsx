import { BasisLine } from "@/components/findings/basis-line";
import { FindingWords } from "@/components/findings/finding-words";
import { VerdictMark, verdictEdge } from "@/components/findings/verdict-mark";
import { cx } from "@/components/ui/cx";
import type { Finding } from "@/lib/engineering/findings";

/** A finding for a thumb and a glance: what is wrong, the numbers in it, what to do next. */
export function FindingBrief({ finding }: { readonly finding: Finding }) {
  return (
    <article className={cx("border border-l-4 border-rule bg-sheet px-3 py-2", verdictEdge(finding.verdict))}>
      <div className="flex flex-wrap items-start justify-between gap-2">
        <h3 className="font-semibold">{finding.title}</h3>
        <VerdictMark verdict={finding.verdict} />
      </div>
      <FindingWords finding={finding} />
      <details className="text-xs">
        <summary className="flex min-h-11 cursor-pointer items-center text-muted">Basis</summary>
        <p className="text-muted">
          <BasisLine basis={finding.basis} />
        </p>
      </details>
    </article>
  );
}
