import type { Answer } from "@/components/forms/use-sent-form";
import { Card } from "@/components/ui/card";
import { Notice } from "@/components/ui/notice";
import { CALLBACK_KINDS, CALLBACK_STATES, type Callback, OUTCOMES } from "@/lib/domain/callbacks";
import { CallbackWorkForm } from "./callback-work-form";

type Props = { readonly callback: Callback; readonly send: (input: unknown) => Promise<Answer> };

/** One complaint with what the record said then, and what came of it. */
export function CallbackCard({ callback, send }: Props) {
  const { kind, state, reportedOn, reportedByName, complaint, evidence, reopenedByLog, dueOn } = callback;
  const { outcome, outcomeSigned } = callback;
  const { fallsShort, log, settings, days } = evidence;
  const facts = [
    ["Fell short in the ledger", fallsShort.join("; ") || "nothing"],
    ["Log of the house", log ?? "none yet"],
    ["Days before", days ?? "not logged"],
    ...(outcome === null
      ? []
      : [
          [
            "Outcome",
            `${OUTCOMES[outcome]}${outcomeSigned === null ? ", not signed by a person" : `, signed by ${outcomeSigned.by} on ${outcomeSigned.at.slice(0, 10)}`}`,
          ] as const,
        ]),
    ["Settings as left", settings.join("; ") || "none recorded"],
  ] as const;
  return (
    <Card
      title={CALLBACK_KINDS[kind].label}
      aside={
        <span className="text-sm font-semibold">
          {CALLBACK_STATES[state]}
          {dueOn === null ? "" : `, due ${dueOn}`}
        </span>
      }
    >
      <div className="grid gap-4">
        <p>
          “{complaint}”{" "}
          <span className="text-sm text-muted">
            {reportedOn}
            {reportedByName === "" ? "" : `, ${reportedByName}`}
          </span>
        </p>
        {reopenedByLog === "" ? null : (
          <Notice kind="problem" title="Opened again by the log">
            {reopenedByLog}
          </Notice>
        )}
        <dl className="grid gap-2 text-sm">
          {facts.map(([label, value]) => (
            <div key={label}>
              <dt className="font-semibold">{label}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
        <CallbackWorkForm callback={callback} send={send} />
      </div>
    </Card>
  );
}
