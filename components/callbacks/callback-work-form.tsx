"use client";

import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { Refusal } from "@/components/forms/refusal";
import { type Answer, problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { CheckField, SelectField } from "@/components/ui/choice-fields";
import { SubmitButton } from "@/components/ui/submit-button";
import { DateField, TextArea, TextField } from "@/components/ui/text-field";
import {
  CALLBACK_CAUSE_KEYS,
  CALLBACK_CAUSES,
  type Callback,
  OUTCOME_KEYS,
  OUTCOMES,
} from "@/lib/domain/callbacks";

type Props = { readonly callback: Callback; readonly send: (input: unknown) => Promise<Answer> };

/** Cause, fix, and whether it worked. */
export function CallbackWorkForm({ callback, send }: Props) {
  const { id, version, causeKind, cause, fix, fixedOn, outcome, outcomeNote, outcomeCheckedOn, dueOn } =
    callback;
  const [sent, submit, busy] = useSentForm((form) =>
    send({ ...Object.fromEntries(form), callbackId: id, expectedVersion: version }),
  );
  const common = (name: string) => ({
    name,
    id: `${name}-${id}`,
    error: problemOf(problemsOf(sent), name),
  });
  return (
    <ActionForm action={submit} className="grid gap-3 border-t border-rule pt-4">
      <Refusal form={sent} title="Not saved yet" />
      <SelectField
        {...common("causeKind")}
        label="Kind of cause"
        optional
        placeholder="not known yet"
        options={CALLBACK_CAUSE_KEYS.map((value) => ({ value, label: CALLBACK_CAUSES[value] }))}
        defaultValue={causeKind ?? ""}
      />
      <TextArea {...common("cause")} label="Cause" rows={2} defaultValue={cause} optional />
      <TextArea {...common("fix")} label="Fix" rows={2} defaultValue={fix} optional />
      <DateField {...common("fixedOn")} label="Fixed on" defaultValue={fixedOn ?? ""} optional />
      <SelectField
        {...common("outcome")}
        label="Outcome"
        optional
        placeholder="not checked yet"
        options={OUTCOME_KEYS.map((value) => ({ value, label: OUTCOMES[value] }))}
        defaultValue={outcome ?? ""}
      />
      <DateField
        {...common("outcomeCheckedOn")}
        label="Outcome checked on"
        defaultValue={outcomeCheckedOn ?? ""}
        optional
      />
      <TextField
        {...common("outcomeNote")}
        label="Note on the outcome"
        defaultValue={outcomeNote}
        optional
        autoComplete="off"
      />
      <CheckField
        {...common("signOutcome")}
        label="I have checked the outcome myself and sign it"
        hint={
          callback.outcomeSigned === null
            ? "Needed with an outcome; your name and the time are kept beside it."
            : `Signed by ${callback.outcomeSigned.by} on ${callback.outcomeSigned.at.slice(0, 10)}. A changed outcome is signed anew.`
        }
      />
      <DateField
        {...common("dueOn")}
        label="Next step due"
        hint="Left as it is, it follows from what was done: a visit in 3 days, a look at the outcome 14 days after the fix."
        defaultValue={dueOn ?? ""}
        optional
      />
      <SubmitButton busy={busy} variant="secondary">
        Save callback
      </SubmitButton>
    </ActionForm>
  );
}
