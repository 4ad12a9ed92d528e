import { ArrowDown } from "lucide-react";
import { VerdictMark } from "@/components/findings/verdict-mark";
import type { Said } from "@/lib/domain/startup-said";
import { FindingBrief } from "./finding-brief";

const PLACE = "what-it-says";

/** The worst of it in one line beside the thumb: the keys cover the rest, and a wrong reading must not pass unseen. */
export function ReadingVerdict({ findings, asked }: Said) {
  const judged = findings.filter((one) => one.verdict !== "not measured" && one.verdict !== null);
  const [worst] = judged;
  if (worst === undefined && asked.length === 0) return null;
  const alike = judged.filter((one) => one.verdict === worst?.verdict).length;
  const isAsked = asked.length > 0 && worst?.verdict !== "falls short";
  return (
    <button
      type="button"
      className="flex min-h-11 w-full min-w-0 items-center gap-2 text-left"
      onClick={() => document.getElementById(PLACE)?.scrollIntoView({ block: "start" })}
    >
      {isAsked || worst === undefined ? (
        <strong className="text-unsure">Is this right?</strong>
      ) : (
        <VerdictMark verdict={worst.verdict} className="text-base" />
      )}
      <span className="min-w-0 flex-1 truncate">
        {isAsked || worst === undefined ? asked[0]?.question : worst.title}
        {alike > 1 && !isAsked ? `, and ${alike - 1} more` : ""}
      </span>
      <ArrowDown aria-hidden="true" className="size-5 shrink-0 text-muted" />
    </button>
  );
}

/** What this reading says, in full. */
export function ReadingFindings({ findings, asked }: Said) {
  const said = findings.filter((one) => one.verdict !== "not measured");
  if (said.length + asked.length === 0) return null;
  return (
    <section id={PLACE} aria-label="What this reading says" className="grid scroll-mt-2 gap-2">
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
      {said.map((finding, index) =>
        finding.verdict === "meets" ? (
          // biome-ignore lint/suspicious/noArrayIndexKey: one rule may speak for both stages
          <p key={`${finding.ruleId} ${index}`} className="flex items-start justify-between gap-2 text-sm">
            <span>{finding.statement}</span>
            <VerdictMark verdict="meets" />
          </p>
        ) : (
          // biome-ignore lint/suspicious/noArrayIndexKey: one rule may speak for both stages
          <FindingBrief key={`${finding.ruleId} ${index}`} finding={finding} />
        ),
      )}
    </section>
  );
}
