import { FindingBrief } from "./finding-brief";
import { JobFrame } from "./job-frame";
import { useEvaluation } from "./use-evaluation";
import type { Work } from "./use-job";
import type { Place } from "./use-place";

type Props = { readonly work: Work; readonly go: (place: Place) => void };

const ORDER = ["falls short", "can't tell", "not measured", "meets", null] as const;
const TITLES = {
  "falls short": "Falls short",
  "can't tell": "Can’t tell with these readings",
  "not measured": "Not measured",
  meets: "Meets",
} as const;

/** Everything the readings say, worst first. */
export function FindingsScreen({ work, go }: Props) {
  const evaluation = useEvaluation(work.context);
  return (
    <JobFrame work={work} go={go} title="What the readings say">
      {evaluation === null ? (
        <p role="status">Working it out…</p>
      ) : (
        <div className="grid gap-5">
          {ORDER.map((verdict) => {
            const group = evaluation.findings.startup_record.filter((one) => one.verdict === verdict);
            if (group.length === 0) return null;
            return (
              <section key={String(verdict)} className="grid gap-2">
                <h2 className="font-semibold">
                  {verdict === null ? "For information" : TITLES[verdict]} ({group.length})
                </h2>
                {group.map((finding, index) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: one rule may speak for both stages
                  <FindingBrief key={`${finding.ruleId} ${index}`} finding={finding} />
                ))}
              </section>
            );
          })}
        </div>
      )}
    </JobFrame>
  );
}
