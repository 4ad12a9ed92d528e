"use client";

import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { Refusal } from "@/components/forms/refusal";
import { problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextField } from "@/components/ui/text-field";
import type { FieldProblem } from "@/lib/domain/problems";

type Answer =
  | { readonly ok: true; readonly value: { readonly email: string } }
  | { readonly ok: false; readonly message: string; readonly fields: readonly FieldProblem[] };
type Props = {
  readonly secret: string;
  readonly personIsKnown: boolean;
  readonly join: (input: unknown) => Promise<Answer>;
};

/** A new person chooses a password; one who already signs in here proves the one they have. */
export function JoinForm({ secret, personIsKnown, join }: Props) {
  const [sent, send, busy] = useSentForm(async (form) => {
    const answer = await join({ secret, password: String(form.get("password")) });
    if (answer.ok) {
      window.location.assign(`/sign-in?joined=1&email=${encodeURIComponent(answer.value.email)}`);
    }
    return answer;
  });
  return (
    <ActionForm action={send} className="grid gap-4">
      <Refusal form={sent} title="You have not joined yet" />
      <TextField
        name="password"
        type="password"
        label={personIsKnown ? "Your present password" : "Choose a password"}
        hint={
          personIsKnown
            ? "You already sign in here with this address."
            : "At least 10 characters; a few words in a row are fine."
        }
        autoComplete={personIsKnown ? "current-password" : "new-password"}
        error={problemOf(problemsOf(sent), "password")}
        required
      />
      <SubmitButton busy={busy} busyText="Joining…" wide>
        Join
      </SubmitButton>
    </ActionForm>
  );
}
