"use client";

import { useState } from "react";
import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { Refusal } from "@/components/forms/refusal";
import { type Answer, problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { Card } from "@/components/ui/card";
import { SelectField } from "@/components/ui/choice-fields";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextArea } from "@/components/ui/text-field";
import type { FieldQuestion } from "@/lib/domain/field-bundle";
import { STAGE_FIELDS } from "@/lib/domain/stages";

type Send = (input: unknown) => Promise<Answer>;
type Props = {
  readonly jobId: string;
  readonly questions: readonly FieldQuestion[];
  readonly ask: Send;
  readonly close: Send;
};

const FIELDS = STAGE_FIELDS.startup_record;
const READINGS = Object.entries(FIELDS).map(([value, field]) => ({
  value,
  label: `${field.label} (${field.group})`,
}));

/** Asks the crew; the question is on the phone at its next contact, the answer here when it comes. */
export function QuestionsPanel({ jobId, questions, ask, close }: Props) {
  const [round, setRound] = useState(0);
  const [sent, submit, busy] = useSentForm(
    (form) => ask({ jobId, text: form.get("text"), fieldPath: form.get("fieldPath") }),
    () => setRound((now) => now + 1),
  );
  const problem = (field: string) => problemOf(problemsOf(sent), field);
  return (
    <Card title="Questions to the crew">
      <div className="grid gap-4">
        {questions.length === 0 ? null : (
          <ul className="grid gap-3">
            {questions.map((one) => (
              <li key={one.id} className="border-l-4 border-l-rule-strong pl-3">
                <Asked question={one} jobId={jobId} close={close} />
              </li>
            ))}
          </ul>
        )}
        <ActionForm key={round} action={submit} className="grid gap-3">
          <Refusal form={sent} title="Not asked yet" />
          <SelectField
            name="fieldPath"
            label="About"
            placeholder="The whole job"
            options={READINGS}
            error={problem("fieldPath")}
          />
          <TextArea name="text" label="Question" error={problem("text")} />
          <SubmitButton busy={busy} busyText="Asking…" variant="secondary">
            Ask
          </SubmitButton>
        </ActionForm>
      </div>
    </Card>
  );
}

function Asked({
  question,
  jobId,
  close,
}: {
  readonly question: FieldQuestion;
  readonly jobId: string;
  readonly close: Send;
}) {
  const [sent, submit, busy] = useSentForm(() => close({ jobId, questionId: question.id }));
  const field = question.fieldPath === null ? undefined : FIELDS[question.fieldPath];
  return (
    <ActionForm action={submit} className="grid gap-1">
      <Refusal form={sent} title="Not closed" />
      {field ? <p className="text-sm text-muted">{field.label}</p> : null}
      <p className="font-semibold">{question.text}</p>
      <p className="text-sm text-muted">Asked by {question.askedByName}</p>
      {question.answer === null ? (
        <p className="text-sm">No answer yet.</p>
      ) : (
        <p>
          {question.answer} <span className="text-sm text-muted">— {question.answeredByName}</span>
        </p>
      )}
      <div>
        <SubmitButton busy={busy} busyText="Closing…" variant="quiet">
          {question.answer === null ? "Withdraw" : "Close"}
        </SubmitButton>
      </div>
    </ActionForm>
  );
}
