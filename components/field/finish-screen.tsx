import { VerdictMark, verdictEdge } from "@/components/findings/verdict-mark";
import { Card } from "@/components/ui/card";
import { cx } from "@/components/ui/cx";
import { SafetyCaution } from "@/components/ui/safety-caution";
import { screenState } from "@/lib/domain/startup-walk";
import type { Verdict } from "@/lib/engineering/findings";
import { EntryField } from "./entry-field";
import { FindingBrief } from "./finding-brief";
import { JobFrame } from "./job-frame";
import { Signature } from "./signature";
import { useEngine, useEvaluation } from "./use-evaluation";
import type { Work } from "./use-job";
import type { Place } from "./use-place";

type Props = { readonly work: Work; readonly go: (place: Place) => void };

const VERDICT_OF: Readonly<Record<string, Verdict>> = {
  yes: "meets",
  no: "falls short",
  "can't tell": "can't tell",
  "not measured": "not measured",
};

const WALK_THROUGH = [
  "customerShownName",
  "shownThermostat",
  "shownFan",
  "shownFilter",
  "shownDrain",
  "shownPower",
  "shownHumidity",
  "walkThroughDone",
] as const;

/** The last screen: will this house be dry, what is left to do, what the customer was shown, the signature. */
export function FinishScreen({ work, go }: Props) {
  const { screens, values } = work;
  const open = screens.filter((screen) => screenState(screen, values) !== "done");
  return (
    <JobFrame work={work} go={go} title="Before leaving">
      <div className="grid gap-5">
        <DryCard work={work} />
        {open.length === 0 ? null : (
          <p>
            {open.length} of {screens.length} screens are not complete.{" "}
            <button
              type="button"
              className="text-link min-h-11"
              onClick={() => go({ job: work.job.id, at: open[0]?.id ?? null })}
            >
              Go to the first
            </button>
          </p>
        )}
        <SafetyCaution>
          Panels closed, disconnect on, lock-outs off, gauges off and caps on, no tools left in the attic.
        </SafetyCaution>
        <Card title="Customer walk-through">
          <div className="grid gap-4">
            {WALK_THROUGH.map((key) => (
              <EntryField key={key} work={work} name={key} isFirst={false} />
            ))}
          </div>
        </Card>
        <Signature work={work} />
      </div>
    </JobFrame>
  );
}

function DryCard({ work }: { readonly work: Work }) {
  const engine = useEngine();
  const evaluation = useEvaluation(work.context);
  if (engine === null || evaluation === null) return <p role="status">Working it out…</p>;
  const { answer, sentence, reasons } = engine.dryAnswer(evaluation);
  const verdict = VERDICT_OF[answer] ?? null;
  return (
    <section aria-label="Will this house be dry" className="grid gap-3">
      <div className={cx("border border-l-8 border-rule bg-sheet p-4", verdictEdge(verdict))}>
        <h2 className="text-lg font-semibold">Will this house be dry?</h2>
        <p className="mt-1 text-lg">{sentence}</p>
        <VerdictMark verdict={verdict} />
      </div>
      {reasons.map((finding, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: one rule may speak for both stages
        <FindingBrief key={`${finding.ruleId} ${index}`} finding={finding} />
      ))}
    </section>
  );
}
