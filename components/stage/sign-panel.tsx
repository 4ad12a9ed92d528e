"use client";

import { useActionState } from "react";
import { ActionForm } from "@/components/forms/action-form";
import { ErrorSummary, problemOf } from "@/components/forms/error-summary";
import { Card } from "@/components/ui/card";
import { Notice } from "@/components/ui/notice";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextField } from "@/components/ui/text-field";
import type { FieldProblem } from "@/lib/domain/problems";

type Answer =
  | { readonly ok: true }
  | { readonly ok: false; readonly message: string; readonly fields: readonly FieldProblem[] };
type Refused = { readonly message: string; readonly fields: readonly FieldProblem[] } | null;
type Props = {
  readonly jobId: string;
  readonly stage: string;
  readonly version: number;
  readonly name: string;
  readonly sign: (input: unknown) => Promise<Answer>;
};

/** Signing freezes what was last saved. */
export function SignPanel({ jobId, stage, version, name, sign }: Props) {
  const [refused, send, busy] = useActionState(async (_: Refused, form: FormData): Promise<Refused> => {
    const answer = await sign({
      jobId,
      stage,
      expectedVersion: version,
      signatureName: String(form.get("signatureName")),
    });
    return answer.ok ? null : { message: answer.message, fields: answer.fields };
  }, null);
  return (
    <Card title="Sign">
      <ActionForm action={send} className="grid max-w-xl gap-3">
        <p className="text-sm text-muted">
          Signing freezes this revision as last saved. A correction later needs a reason and makes a new
          revision.
        </p>
        {refused ? <ErrorSummary title="Not signed yet" problems={refused.fields} /> : null}
        {refused && refused.fields.length === 0 ? <Notice kind="problem" title={refused.message} /> : null}
        <TextField
          name="signatureName"
          label="Name of the signer"
          defaultValue={name}
          error={problemOf(refused?.fields ?? [], "signatureName")}
        />
        <SubmitButton busy={busy} busyText="Signing…">
          Sign
        </SubmitButton>
      </ActionForm>
    </Card>
  );
}
