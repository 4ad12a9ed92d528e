"use client";

import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { Refusal } from "@/components/forms/refusal";
import { type Answer, problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { Card } from "@/components/ui/card";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextField } from "@/components/ui/text-field";

type Props = {
  readonly jobId: string;
  readonly stage: string;
  readonly reopen: (input: unknown) => Promise<Answer>;
};

/** A signed record is opened again only with a reason; the signed revision stays as it was. */
export function ReopenPanel({ jobId, stage, reopen }: Props) {
  const [sent, send, busy] = useSentForm((form) =>
    reopen({ jobId, stage, reason: String(form.get("reason")) }),
  );
  return (
    <Card title="Reopen">
      <ActionForm action={send} className="grid max-w-xl gap-3">
        <Refusal form={sent} title="Not reopened yet" />
        <TextField
          name="reason"
          label="Reason for reopening"
          error={problemOf(problemsOf(sent), "reason")}
          hint="It stays on the job's trail. The signed revision is kept."
        />
        <SubmitButton busy={busy} variant="secondary">
          Reopen as a new revision
        </SubmitButton>
      </ActionForm>
    </Card>
  );
}
