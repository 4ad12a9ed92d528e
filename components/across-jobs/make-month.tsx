"use client";

import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { Refusal } from "@/components/forms/refusal";
import { type Answer, problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { Notice } from "@/components/ui/notice";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextField } from "@/components/ui/text-field";

type Props = {
  /** The running month, which the form begins with. */
  readonly month: string;
  readonly make: (input: unknown) => Promise<Answer>;
};

/** Makes the digest of a month. */
export function MakeMonth({ month, make }: Props) {
  const [sent, send, busy] = useSentForm((form) => make(Object.fromEntries(form)));
  return (
    <ActionForm action={send} className="grid max-w-xs gap-4">
      <Refusal form={sent} title="The month was not made" />
      <TextField
        name="month"
        label="Month"
        hint="Year and month, such as 2026-07."
        inputMode="numeric"
        defaultValue={month}
        required
        error={problemOf(problemsOf(sent), "month")}
      />
      <div>
        <SubmitButton busy={busy} busyText="Making…">
          Make the month
        </SubmitButton>
      </div>
      {sent.state === "done" && !busy ? (
        <Notice kind="done" title="The month is ready. It stands in the list below." />
      ) : null}
    </ActionForm>
  );
}
