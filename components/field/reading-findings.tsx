import { VerdictMark } from "@/components/findings/verdict-mark";
import type { WalkScreen } from "@/lib/domain/startup-walk";
import { FindingBrief } from "./finding-brief";
import { useEvaluation } from "./use-evaluation";
import type { Work } from "./use-job";

type Props = { readonly work: Work; readonly screen: WalkScreen };

/** What this reading says at once, as far as it can be said. What is missing is not repeated on every screen. */
export function ReadingFindings({ work, screen }: Props) {
  const evaluation = useEvaluation(work.context);
  if (evaluation === null) return null;
  const own = new Set<string>(screen.fields);
  const isGiven = screen.fields.some((key) => (work.values[key] ?? null) !== null);
  const said = evaluation.findings.startup_record.filter(
    (one) => one.verdict !== "not measured" && one.inputs.some((input) => own.has(input)),
  );
  const asked = evaluation.questions.filter((one) => one.fields.some((field) => isAbout(field, screen)));
  if (!isGiven || said.length + asked.length === 0) return null;
  return (
    <section aria-label="What this reading says" className="grid gap-2">
      {asked.map((question) => (
        <p
          key={question.id}
          role="note"
          className="border-l-4 border-unsure bg-unsure-tint px-3 py-2 text-sm"
        >
          <strong>Is this right? </strong>
          {question.question}
        </p>
      ))}
      {said
        .filter((one) => one.verdict !== "meets")
        .map((finding, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: one rule may speak for both stages
          <FindingBrief key={`${finding.ruleId} ${index}`} finding={finding} />
        ))}
      {said
        .filter((one) => one.verdict === "meets")
        .map((finding, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: one rule may speak for both stages
          <p key={`${finding.ruleId} ${index}`} className="flex items-start justify-between gap-2 text-sm">
            <span>{finding.statement}</span>
            <VerdictMark verdict="meets" />
          </p>
        ))}
    </section>
  );
}

/** `supplyDryBulbF` and the like are about the fields of either stage that end alike. */
function isAbout(reading: string, screen: WalkScreen): boolean {
  const tail = reading
    .replace("DryBulbF", "DbF")
    .replace("WetBulbF", "WbF")
    .replace("RelativeHumidityPct", "RhPct")
    .toLowerCase();
  return screen.fields.some((key) => key.toLowerCase().endsWith(tail));
}
