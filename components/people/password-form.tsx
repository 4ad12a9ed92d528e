"use client";

import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { Refusal } from "@/components/forms/refusal";
import { type Answer, problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextField } from "@/components/ui/text-field";

export function PasswordForm({ change }: { readonly change: (input: unknown) => Promise<Answer> }) {
  const [sent, send, busy] = useSentForm(
    (form) => change({ current: String(form.get("current")), next: String(form.get("next")) }),
    () => window.location.assign("/sign-in"),
  );
  const problems = problemsOf(sent);
  return (
    <ActionForm action={send} className="grid gap-4">
      <Refusal form={sent} title="Not changed yet" />
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
      <SubmitButton busy={busy}>Change password</SubmitButton>
    </ActionForm>
  );
}
