import { BasisLine } from "@/components/findings/basis-line";
import { Quantity } from "@/components/ui/quantity";
import type { Rule } from "@/lib/engineering/findings";
import type { LimitRow } from "./limit-row";

type Props = {
  readonly rule: Rule & { readonly reads: readonly LimitRow[]; readonly sources: readonly string[] };
};

/** One rule: what it compares, what it rests on, which limits it reads and how it is checked. */
export function RuleEntry({ rule }: Props) {
  return (
    <article
      id={rule.id}
      className="max-sm:[&_.whitespace-nowrap]:whitespace-normal scroll-mt-4 border-b border-rule px-4 py-3 last:border-b-0 target:shadow-[inset_4px_0_0_var(--accent)]"
    >
      <h3 className="font-semibold">
        <a href={`#${rule.id}`} className="hover:underline">
          {rule.title}
        </a>
      </h3>
      <dl className="mt-1 grid gap-x-4 gap-y-1 text-sm sm:grid-cols-[8rem_minmax(0,1fr)]">
        <Line name="Equation">{rule.equation}</Line>
        <Line name="Basis">
          <BasisLine basis={rule.basis} />
        </Line>
        {rule.reads.length === 0 ? null : (
          <Line name="Limits">
            <ul>
              {rule.reads.map(({ key, title, inForce, unit, decimals }) => (
                <li key={key}>
                  <a href={`#limit-${key}`} className="text-link">
                    {title}
                  </a>
                  : <Quantity value={inForce} unit={unit} decimals={decimals} />
                </li>
              ))}
            </ul>
          </Line>
        )}
        <Line name="Checked by">
          <details>
            <summary className="cursor-pointer">
              a test against {rule.sources.length === 1 ? "1 source" : `${rule.sources.length} sources`}
            </summary>
            <p className="mt-1 break-all text-muted">{rule.checkedBy}</p>
            <ul className="list-disc pl-5">
              {rule.sources.map((source) => (
                <li key={source}>{source}</li>
              ))}
            </ul>
          </details>
        </Line>
        <Line name="Id">
          <span className="break-all text-muted">{rule.id}</span>
        </Line>
      </dl>
    </article>
  );
}

function Line({ name, children }: { readonly name: string; readonly children: React.ReactNode }) {
  return (
    <div className="contents">
      <dt className="text-muted">{name}</dt>
      <dd className="min-w-0 break-words max-sm:mb-1">{children}</dd>
    </div>
  );
}
