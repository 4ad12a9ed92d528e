import { TextLink } from "@/components/ui/button";
import type { WeakLink } from "@/lib/domain/attention";
import { STAGE_NAMES, STAGE_SLUGS, type StageKey } from "@/lib/domain/stages/keys";
import { FindingCard } from "./finding-card";
import { OPEN_AT_MOST } from "./finding-list";

type Props = { readonly jobId: string; readonly weak: readonly WeakLink[] };

const stageHref = (jobId: string, stage: StageKey) => `/jobs/${jobId}/${STAGE_SLUGS[stage]}`;

/** The first weak link in the order of the chain, since later ones often follow from it, and what to do about it. */
export function FirstToMend({ jobId, weak }: Props) {
  const all = weak.flatMap(({ stage, findings }) => findings.map((finding) => ({ stage, finding })));
  const first = all.find(({ finding }) => finding.verdict === "falls short") ?? all[0];
  if (first === undefined) return null;
  const { title, verdict, nextStep } = first.finding;
  return (
    <p className="border-l-4 border-rule-strong bg-sheet px-4 py-3">
      <strong>
        {STAGE_NAMES[first.stage]}: {title} {verdict === "falls short" ? "falls short" : "can’t be told"}.
      </strong>{" "}
      {nextStep === null ? null : `${nextStep} `}
      <TextLink href={stageHref(jobId, first.stage)}>Open {STAGE_NAMES[first.stage].toLowerCase()}</TextLink>
      {all.length === 1 ? null : (
        <>
          {" or "}
          <a href="#weak" className="text-link">
            see {all.length - 1} more
          </a>
        </>
      )}
    </p>
  );
}

/** What falls short or cannot be told, link by link of the chain. */
export function WeakLinks({ jobId, weak }: Props) {
  if (weak.length === 0)
    return <p className="text-sm text-muted">Nothing falls short in what has been entered.</p>;
  const folded = weak.flatMap(({ findings }) => findings).length > OPEN_AT_MOST;
  return (
    <div className="grid gap-5">
      {weak.map(({ stage, findings }) => (
        <section key={stage} className="grid min-w-0 gap-2">
          <h3 className="flex items-baseline gap-2 text-sm font-semibold">
            <TextLink href={stageHref(jobId, stage)}>{STAGE_NAMES[stage]}</TextLink>
            <span className="font-normal text-muted">{findings.length}</span>
          </h3>
          {findings.map((finding, index) => (
            <FindingCard
              // biome-ignore lint/suspicious/noArrayIndexKey: one rule may speak more than once, as for each stage
              key={`${finding.ruleId} ${index}`}
              finding={finding}
              ruleHref={`/rules#${finding.ruleId}`}
              folded={folded}
            />
          ))}
        </section>
      ))}
    </div>
  );
}
