"use client";

import { useState } from "react";
import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { Refusal } from "@/components/forms/refusal";
import { type Answer, problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { Button } from "@/components/ui/button";
import { Dialog } from "@/components/ui/dialog";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextArea } from "@/components/ui/text-field";
import type { Job } from "@/lib/domain/jobs";
import { CUSTOMER_AND_HOME, CustomerAndHome } from "./customer-and-home";

type Props = { readonly job: Job; readonly correct: (input: unknown) => Promise<Answer> };

/** What was taken down wrong, or is only known later, put right; the trail keeps both. */
export function CorrectJob({ job, correct }: Props) {
  const [open, setOpen] = useState(false);
  return (
    <Dialog
      title="Correct customer and home"
      description="The trail keeps what stood here before. The job is judged anew when the elevation changes."
      open={open}
      onOpenChange={setOpen}
      trigger={<Button variant="quiet">Correct</Button>}
    >
      <CorrectForm job={job} correct={correct} onDone={() => setOpen(false)} />
    </Dialog>
  );
}

function CorrectForm({ job, correct, onDone }: Props & { readonly onDone: () => void }) {
  // As it was opened: the page behind may follow somebody else's change.
  const [{ id, version, title, customer, home, note }] = useState(job);
  const [sent, send, busy] = useSentForm((form) => {
    const texts = CUSTOMER_AND_HOME.map((name) => [name, String(form.get(name) ?? "")]);
    const entered = { ...Object.fromEntries(texts), note: String(form.get("note") ?? "") };
    return correct({ jobId: id, expectedVersion: version, ...entered });
  }, onDone);
  const error = (field: string) => problemOf(problemsOf(sent), field);
  const { name, email, phone } = customer;
  const { addressLine, city, region, postalCode, builder } = home;
  return (
    <ActionForm action={send} className="grid gap-6">
      <Refusal form={sent} title="Not corrected yet" />
      <CustomerAndHome
        error={error}
        values={{
          title,
          customerName: name,
          customerEmail: email,
          customerPhone: phone,
          addressLine,
          city,
          region,
          postalCode,
          builder,
          elevationFt: String(home.elevationFt),
        }}
      />
      <TextArea name="note" label="Note" optional rows={3} defaultValue={note} error={error("note")} />
      <div>
        <SubmitButton busy={busy}>Save the correction</SubmitButton>
      </div>
    </ActionForm>
  );
}
