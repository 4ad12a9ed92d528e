import { TextArea } from "@/components/ui/text-field";
import { readDeviations } from "@/lib/domain/deviations";
import type { Finding } from "@/lib/engineering/findings";

type Props = {
  readonly findings: readonly Finding[];
  /** The field that keeps the reasons. */
  readonly text: string | null;
  readonly disabled: boolean;
  readonly say: (ruleId: string, reason: string) => void;
};

/** Asks for the reason of each departure from a limit. It is kept with the record and said with the finding. */
export function Departures({ findings, text, disabled, say }: Props) {
  const short = findings.filter((one) => one.verdict === "falls short");
  const rules = [...new Map(short.map((one) => [one.ruleId, one.title]))];
  if (rules.length === 0) return null;
  const reasons = readDeviations(text);
  return (
    <fieldset className="mt-5 grid gap-3 border border-rule bg-sheet p-4" data-departures="">
      <legend className="px-1 font-semibold">Departing on purpose?</legend>
      <p className="text-sm text-muted">
        A reason is kept with this record, its trail and its packets. The verdict stays as it is.
      </p>
      {rules.map(([ruleId, title]) => (
        <TextArea
          key={ruleId}
          name={`departure ${ruleId}`}
          label={`Reason: ${title}`}
          optional
          rows={2}
          maxLength={300}
          disabled={disabled}
          defaultValue={reasons[ruleId] ?? ""}
          onChange={(event) => say(ruleId, event.target.value)}
        />
      ))}
    </fieldset>
  );
}
