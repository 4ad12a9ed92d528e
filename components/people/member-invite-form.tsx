"use client";

import { useState } from "react";
import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { Refusal } from "@/components/forms/refusal";
import { problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { SelectField } from "@/components/ui/choice-fields";
import { Notice } from "@/components/ui/notice";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextField } from "@/components/ui/text-field";
import { ROLE_CHOICES, type Send } from "./member-actions";

/** Sends a one-time link. The form empties only after it was sent. */
export function MemberInviteForm({ invite }: { readonly invite: Send }) {
  const [round, setRound] = useState(0);
  const [lastEmail, setLastEmail] = useState<string | null>(null);
  const [sent, send, busy] = useSentForm(async (form) => {
    const answer = await invite(Object.fromEntries(form));
    if (answer.ok) {
      setLastEmail(String(form.get("email")));
      setRound((now) => now + 1);
    }
    return answer;
  });
  const problem = (field: string) => problemOf(problemsOf(sent), field);
  return (
    <ActionForm key={round} action={send} className="grid gap-4">
      <Refusal form={sent} title="Not invited yet" />
      {sent.state === "done" && lastEmail !== null ? (
        <Notice kind="done" title={`A link is on its way to ${lastEmail}.`}>
          It works once, within 7 days.
        </Notice>
      ) : null}
      <TextField name="name" label="Name" autoComplete="off" required error={problem("name")} />
      <TextField
        name="email"
        label="E-mail"
        type="email"
        autoComplete="off"
        required
        error={problem("email")}
      />
      <SelectField
        name="role"
        label="Role"
        placeholder="Choose a role"
        options={ROLE_CHOICES}
        error={problem("role")}
        required
      />
      <SubmitButton busy={busy} busyText="Sending…">
        Invite
      </SubmitButton>
    </ActionForm>
  );
}
