"use client";

import { useState } from "react";
import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { Refusal } from "@/components/forms/refusal";
import { type Answer, problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { CheckField } from "@/components/ui/choice-fields";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextField } from "@/components/ui/text-field";
import { WEBHOOK_EVENT_KEYS, WEBHOOK_EVENTS } from "@/lib/domain/webhooks";
import { SecretShown } from "./secret-shown";

type Made =
  | { readonly ok: true; readonly value: { readonly secret: string } }
  | Extract<Answer, { ok: false }>;
type Props = { readonly add: (input: unknown) => Promise<Made> };

/** Adds an address and shows what its deliveries are signed with, once. */
export function WebhookForm({ add }: Props) {
  const [round, setRound] = useState(0);
  const [shown, setShown] = useState<string | null>(null);
  const [sent, send, busy] = useSentForm(async (form) => {
    setShown(null);
    const answer = await add({ url: form.get("url"), events: form.getAll("events") });
    if (answer.ok) {
      setShown(answer.value.secret);
      setRound((now) => now + 1);
    }
    return answer;
  });
  const problem = (field: string) => problemOf(problemsOf(sent), field);
  return (
    <>
      {shown === null ? null : (
        <div className="mb-4">
          <SecretShown title="The webhook’s secret" secret={shown}>
            Copy it into the program now: with it the program checks that a delivery is from here. It cannot
            be shown again.
          </SecretShown>
        </div>
      )}
      <ActionForm key={round} action={send} className="grid gap-4">
        <Refusal form={sent} title="Not added" />
        <TextField
          name="url"
          label="Address"
          type="url"
          inputMode="url"
          placeholder="https://"
          autoComplete="off"
          required
          error={problem("url")}
        />
        <fieldset className="min-w-0" aria-describedby={problem("events") ? "events-error" : undefined}>
          <legend className="text-sm font-semibold">Told when</legend>
          {WEBHOOK_EVENT_KEYS.map((event) => (
            <CheckField
              key={event}
              id={`event-${event}`}
              name="events"
              value={event}
              label={WEBHOOK_EVENTS[event]}
            />
          ))}
          {problem("events") === undefined ? null : (
            <p id="events-error" className="text-sm font-semibold text-short">
              {problem("events")}
            </p>
          )}
        </fieldset>
        <SubmitButton busy={busy} busyText="Adding…">
          Add the webhook
        </SubmitButton>
      </ActionForm>
    </>
  );
}
