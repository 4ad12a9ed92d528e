"use client";

import { useState } from "react";
import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { Refusal } from "@/components/forms/refusal";
import { type Answer, problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { RadioRow, SelectField } from "@/components/ui/choice-fields";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextField } from "@/components/ui/text-field";
import { API_ACCESS, API_ACCESS_KEYS, API_TOKEN_DAYS, API_TOKEN_DAYS_KEYS } from "@/lib/domain/api-tokens";
import { SecretShown } from "./secret-shown";

type Made =
  | { readonly ok: true; readonly value: { readonly token: string } }
  | Extract<Answer, { ok: false }>;
type Props = { readonly make: (input: unknown) => Promise<Made> };

const ACCESS = API_ACCESS_KEYS.map((value) => ({ value, ...API_ACCESS[value] }));
const DAYS = API_TOKEN_DAYS_KEYS.map((value) => ({ value, label: API_TOKEN_DAYS[value] }));

/** Makes a token and shows its secret, once. */
export function ApiTokenForm({ make }: Props) {
  const [round, setRound] = useState(0);
  const [shown, setShown] = useState<{ readonly name: string; readonly token: string } | null>(null);
  const [sent, send, busy] = useSentForm(async (form) => {
    setShown(null);
    const answer = await make(Object.fromEntries(form));
    if (answer.ok) {
      setShown({ name: String(form.get("name")), token: answer.value.token });
      setRound((now) => now + 1);
    }
    return answer;
  });
  const problem = (field: string) => problemOf(problemsOf(sent), field);
  return (
    <>
      {shown === null ? null : (
        <div className="mb-4">
          <SecretShown title={`The token “${shown.name}”`} secret={shown.token}>
            Copy it into the program now. It is not kept here and cannot be shown again.
          </SecretShown>
        </div>
      )}
      <ActionForm key={round} action={send} className="grid gap-4">
        <Refusal form={sent} title="No token made" />
        <TextField
          name="name"
          label="Name"
          hint="What will use it, such as the bookkeeping."
          autoComplete="off"
          required
          error={problem("name")}
        />
        <RadioRow name="access" label="May" options={ACCESS} defaultValue="read" error={problem("access")} />
        <SelectField
          name="days"
          label="Works for"
          options={DAYS}
          defaultValue="90"
          error={problem("days")}
          required
        />
        <SubmitButton busy={busy} busyText="Making…">
          Make the token
        </SubmitButton>
      </ActionForm>
    </>
  );
}
