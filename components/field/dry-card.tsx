import { BasisLine } from "@/components/findings/basis-line";
import { VerdictMark, verdictEdge } from "@/components/findings/verdict-mark";
import { cx } from "@/components/ui/cx";
import { Button } from "@/components/ui/plain-button";
import { SafetyCaution } from "@/components/ui/safety-caution";
import type { DryAnswer } from "@/lib/domain/dry-answer";
import { placeOfField, type StartupKey, startupField } from "@/lib/domain/startup-walk";
import type { Finding, Verdict } from "@/lib/engineering/findings";
import { useEngine, useEvaluation } from "./use-evaluation";
import type { Work } from "./use-job";
import type { Place } from "./use-place";

type Props = { readonly work: Work; readonly go: (place: Place) => void };

const SAID: Readonly<Record<DryAnswer["answer"], { readonly word: string; readonly verdict: Verdict }>> = {
  yes: { word: "Yes", verdict: "meets" },
  no: { word: "No", verdict: "falls short" },
  "can't tell": { word: "Can’t tell yet", verdict: "can't tell" },
  "not measured": { word: "Nobody can say", verdict: "not measured" },
};

/** Will this house be dry: one word, one sentence, why, what was not measured, what would settle it. */
export function DryCard({ work, go }: Props) {
  const engine = useEngine();
  const evaluation = useEvaluation(work.context);
  if (engine === null || evaluation === null) return <p role="status">Working it out…</p>;
  const { answer, sentence, against, open, unmeasured } = engine.dryAnswer(work.context, evaluation);
  const { word, verdict } = SAID[answer];
  return (
    <section aria-label="Will this house be dry" className="grid gap-4">
      <div className={cx("border border-l-8 border-rule bg-sheet p-4", verdictEdge(verdict))}>
        <h2 className="font-semibold">Will this house be dry?</h2>
        <p className="mt-1 flex items-center gap-2 text-3xl font-bold">
          <VerdictMark verdict={verdict} look="shape" className="[&_svg]:size-8" />
          {word}
        </p>
        <p className="mt-1 text-lg">{sentence}</p>
      </div>
      <Reasons title={answer === "no" ? "Why not, and what to do" : "Why not"} findings={against} />
      {unmeasured.length === 0 ? null : (
        <section className="grid gap-2">
          <h3 className="font-semibold">Not measured, and it decides</h3>
          {unmeasured.map((key) => (
            <Button
              key={key}
              wide
              onClick={() => go({ job: work.job.id, at: placeOfField(key, work.screens) })}
            >
              {nameOf(key)}
            </Button>
          ))}
        </section>
      )}
      <Reasons title="What would settle it" findings={open} />
    </section>
  );
}

/** Each with what to do; the numbers a tap away, because nobody reads paragraphs on a ladder. */
function Reasons({ title, findings }: { readonly title: string; readonly findings: readonly Finding[] }) {
  if (findings.length === 0) return null;
  return (
    <section className="grid gap-2">
      <h3 className="font-semibold">{title}</h3>
      {findings.map((finding, index) => (
        <article
          // biome-ignore lint/suspicious/noArrayIndexKey: one rule may speak for both stages
          key={`${finding.ruleId} ${index}`}
          className={cx("border border-l-4 border-rule bg-sheet px-3 py-2", verdictEdge(finding.verdict))}
        >
          <h4 className="flex flex-wrap items-start justify-between gap-2 font-semibold">
            {stageOf(finding)}
            {finding.title}
            <VerdictMark verdict={finding.verdict} />
          </h4>
          {finding.nextStep === null ? null : <p className="mt-1">{finding.nextStep}</p>}
          {finding.caution === null ? null : (
            <div className="mt-2">
              <SafetyCaution>{finding.caution}</SafetyCaution>
            </div>
          )}
          <details className="text-sm">
            <summary className="flex min-h-11 cursor-pointer items-center text-muted">
              Numbers and basis
            </summary>
            <p>{finding.statement}</p>
            <p className="mt-1 text-xs text-muted">
              <BasisLine basis={finding.basis} />
            </p>
          </details>
        </article>
      ))}
    </section>
  );
}

/** Findings of the first stage say so: the others are of full capacity or of the whole. */
function stageOf({ inputs }: Finding): string {
  return inputs.some((input) => input.startsWith("first")) ? "First stage: " : "";
}

/** The label alone is the same at both stages. */
function nameOf(key: StartupKey): string {
  const { label } = startupField(key);
  if (key.startsWith("first")) return `${label}, first stage`;
  return key.startsWith("second") ? `${label}, full capacity` : label;
}
