"use client";

import { useActionState } from "react";
import { ActionForm } from "@/components/forms/action-form";
import { ErrorSummary, problemOf } from "@/components/forms/error-summary";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextField } from "@/components/ui/text-field";
import type { FieldProblem } from "@/lib/domain/problems";

type Answer =
  | { readonly ok: true }
  | { readonly ok: false; readonly message: string; readonly fields: readonly FieldProblem[] };

export function PasswordForm({ change }: { readonly change: (input: unknown) => Promise<Answer> }) {
  const [problems, send, busy] = useActionState(async (_: readonly FieldProblem[], form: FormData) => {
    const answer = await change({ current: String(form.get("current")), next: String(form.get("next")) });
    if (answer.ok) {
      window.location.assign("/sign-in");
      return [];
    }
    return answer.fields.length > 0 ? answer.fields : [{ field: "current", message: answer.message }];
  }, []);
  return (
    <ActionForm action={send} className="grid gap-4">
      <ErrorSummary title="Not changed yet" problems={problems} />
      <TextField
        name="current"
        type="password"
        label="Present password"
        autoComplete="current-password"
        error={problemOf(problems, "current")}
      />
      <TextField
        name="next"
        type="password"
        label="New password"
        hint="At least 10 characters; a few words in a row are fine."
        autoComplete="new-password"
        error={problemOf(problems, "next")}
      />
      <p className="text-sm text-muted">
        It signs you out on every device, this one too. Do it at once when a device is lost.
      </p>
      <SubmitButton busy={busy}>Change password</SubmitButton>
    </ActionForm>
  );
}
