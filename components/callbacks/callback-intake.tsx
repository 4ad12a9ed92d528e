"use client";

import { useState } from "react";
import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { Refusal } from "@/components/forms/refusal";
import { type Answer, problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { Card } from "@/components/ui/card";
import { SelectField } from "@/components/ui/choice-fields";
import { SubmitButton } from "@/components/ui/submit-button";
import { DateField, TextArea, TextField } from "@/components/ui/text-field";
import { CALLBACK_KIND_KEYS, CALLBACK_KINDS } from "@/lib/domain/callbacks";

type Props = {
  readonly jobId: string;
  readonly today: string;
  readonly send: (input: unknown) => Promise<Answer>;
};

/** A few answers, taken down while the phone is at the ear. */
export function CallbackIntake({ jobId, today, send }: Props) {
  const [round, setRound] = useState(0);
  const [sent, submit, busy] = useSentForm(
    (form) => send({ ...Object.fromEntries(form), jobId }),
    () => setRound((now) => now + 1),
  );
  const problem = (field: string) => problemOf(problemsOf(sent), field);
  return (
    <Card title="Log a callback">
      <ActionForm key={round} action={submit} className="grid gap-4">
        {round > 0 ? <p role="status">Logged. It stands among the job’s callbacks.</p> : null}
        <Refusal form={sent} title="Not logged yet" />
        <SelectField
          name="kind"
          label="Complaint"
          placeholder="Choose"
          options={CALLBACK_KIND_KEYS.map((value) => ({ value, label: CALLBACK_KINDS[value].label }))}
          error={problem("kind")}
        />
        <TextArea
          name="complaint"
          label="In their words"
          hint="Ctrl+Enter logs it; the rest can wait."
          error={problem("complaint")}
          onKeyDown={(event) => {
            if (event.key !== "Enter" || !(event.ctrlKey || event.metaKey)) return;
            event.preventDefault();
            event.currentTarget.form?.requestSubmit();
          }}
        />
        <DateField name="reportedOn" label="Reported on" defaultValue={today} error={problem("reportedOn")} />
        <DateField
          name="dueOn"
          label="Visit by"
          optional
          hint="Left empty: in three days."
          error={problem("dueOn")}
        />
        <TextField
          name="reportedByName"
          label="Reported by"
          optional
          autoComplete="off"
          error={problem("reportedByName")}
        />
        <SubmitButton busy={busy} busyText="Logging…">
          Log callback
        </SubmitButton>
      </ActionForm>
    </Card>
  );
}
