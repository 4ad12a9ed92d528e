"use client";

import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { Refusal } from "@/components/forms/refusal";
import { type Answer, problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { Card } from "@/components/ui/card";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextField } from "@/components/ui/text-field";
import { formOf, savingForms } from "./saving-forms";

type Props = {
  readonly jobId: string;
  readonly stage: string;
  readonly version: number;
  readonly name: string;
  readonly sign: (input: unknown) => Promise<Answer>;
};

const UNSAVED: Answer = {
  ok: false,
  message: "Something in the form above is not saved; the message there says why. Mend it, then sign.",
  fields: [],
};

/** Signing freezes what was last saved. */
export function SignPanel({ jobId, stage, version, name, sign }: Props) {
  const [sent, send, busy] = useSentForm(async (form) => {
    // The last key may be a moment old: what is signed is what stands in the form.
    const kept = await savingForms.settle(formOf(jobId, stage));
    if (kept?.isSaved === false) return UNSAVED;
    return sign({
      jobId,
      stage,
      expectedVersion: kept?.version ?? version,
      signatureName: String(form.get("signatureName")),
    });
  });
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
