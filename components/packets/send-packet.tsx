"use client";

import { useState } from "react";
import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { Refusal } from "@/components/forms/refusal";
import { type Answer, problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { Button } from "@/components/ui/button";
import { RadioRow } from "@/components/ui/choice-fields";
import { Dialog } from "@/components/ui/dialog";
import { Notice } from "@/components/ui/notice";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextArea, TextField } from "@/components/ui/text-field";

type Props = {
  readonly jobId: string;
  readonly packetId: string;
  readonly name: string;
  readonly to: string;
  readonly isReplaced: boolean;
  readonly send: (input: unknown) => Promise<Answer>;
};

/** Sends a packet by a private link. */
export function SendPacket({ jobId, packetId, name, to, isReplaced, send }: Props) {
  const [open, setOpen] = useState(false);
  const [sent, submit, busy] = useSentForm(
    (form) => {
      const { attach, ...fields } = Object.fromEntries(form);
      return send({ ...fields, jobId, packetId, attach: attach === "yes" });
    },
    () => setOpen(false),
  );
  const problem = (field: string) => problemOf(problemsOf(sent), field);
  return (
    <Dialog
      title={`Send ${name}`}
      description="By mail, with a private link that ends by itself and can be withdrawn."
      trigger={<Button>Send…</Button>}
      open={open}
      onOpenChange={setOpen}
    >
      <ActionForm action={submit} className="grid gap-4">
        <Refusal form={sent} title="Nothing was sent" />
        {isReplaced ? <Notice kind="information" title="A newer packet has replaced this one." /> : null}
        <TextField name="to" label="To" type="email" defaultValue={to} required error={problem("to")} />
        <TextArea name="message" label="Message" optional error={problem("message")} />
        <RadioRow
          name="days"
          label="The link opens for"
          options={[
            { value: "7", label: "7 days" },
            { value: "30", label: "30 days" },
            { value: "90", label: "90 days" },
          ]}
          defaultValue="30"
          error={problem("days")}
        />
        <RadioRow
          name="attach"
          label="Attach the file as well"
          options={[
            { value: "no", label: "no" },
            { value: "yes", label: "yes" },
          ]}
          defaultValue="no"
        />
        <div>
          <SubmitButton busy={busy} busyText="Sending…">
            Send
          </SubmitButton>
        </div>
      </ActionForm>
    </Dialog>
  );
}
