"use client";

import { useActionState } from "react";
import { ActionForm } from "@/components/forms/action-form";
import { Card } from "@/components/ui/card";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextField } from "@/components/ui/text-field";

type Answer = { readonly ok: true } | { readonly ok: false; readonly message: string };
type Props = {
  readonly jobId: string;
  readonly stage: string;
  readonly reopen: (input: unknown) => Promise<Answer>;
};

/** A signed record is opened again only with a reason; the signed revision stays as it was. */
export function ReopenPanel({ jobId, stage, reopen }: Props) {
  const [problem, send, busy] = useActionState(async (_: string | undefined, form: FormData) => {
    const answer = await reopen({ jobId, stage, reason: String(form.get("reason")) });
    return answer.ok ? undefined : answer.message;
  }, undefined);
  return (
    <Card title="Reopen">
      <ActionForm action={send} className="grid max-w-xl gap-3">
        <TextField
          name="reason"
          label="Reason for reopening"
          error={problem}
          hint="It stays on the job's trail. The signed revision is kept."
        />
        <SubmitButton busy={busy} variant="secondary">
          Reopen as a new revision
        </SubmitButton>
      </ActionForm>
    </Card>
  );
}
