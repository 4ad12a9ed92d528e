"use client";

import { ActionForm } from "@/components/forms/action-form";
import { Refusal } from "@/components/forms/refusal";
import { type Answer, useSentForm } from "@/components/forms/use-sent-form";
import { CheckField } from "@/components/ui/choice-fields";
import { SubmitButton } from "@/components/ui/submit-button";
import { MAIL_KINDS, type MailKind } from "@/lib/domain/mail-kinds";

type Props = {
  readonly switches: readonly { readonly kind: MailKind; readonly on: boolean }[];
  readonly send: (input: unknown) => Promise<Answer>;
};

/** Which of the company's own mails come to this person. */
export function MailSwitches({ switches, send }: Props) {
  const [sent, submit, busy] = useSentForm((form) =>
    send({ on: switches.map(({ kind }) => kind).filter((kind) => form.get(kind) === "on") }),
  );
  return (
    <ActionForm action={submit} className="grid gap-3">
      <Refusal form={sent} title="Not saved yet" />
      {switches.map(({ kind, on }) => (
        <CheckField key={kind} name={kind} label={MAIL_KINDS[kind].label} defaultChecked={on} />
      ))}
      <SubmitButton busy={busy} variant="secondary">
        Save
      </SubmitButton>
    </ActionForm>
  );
}
