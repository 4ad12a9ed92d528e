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
  readonly version: number;
  readonly name: string;
  readonly sign: (input: unknown) => Promise<Answer>;
};

/** Signing freezes what was last saved. */
export function SignPanel({ jobId, stage, version, name, sign }: Props) {
  const [sent, send, busy] = useSentForm((form) =>
    sign({ jobId, stage, expectedVersion: version, signatureName: String(form.get("signatureName")) }),
  );
  return (
    <Card title="Sign">
      <ActionForm action={send} className="grid max-w-xl gap-3">
        <p className="text-sm text-muted">
          Signing freezes this revision as last saved. A correction later needs a reason and makes a new
          revision.
        </p>
        <Refusal form={sent} title="Not signed yet" />
        <TextField
          name="signatureName"
          label="Name of the signer"
          defaultValue={name}
          error={problemOf(problemsOf(sent), "signatureName")}
        />
        <SubmitButton busy={busy} busyText="Signing…">
          Sign
        </SubmitButton>
      </ActionForm>
    </Card>
  );
}
