"use client";

import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { Refusal } from "@/components/forms/refusal";
import { type Answer, problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { Button } from "@/components/ui/button";
import { Dialog, DialogClose } from "@/components/ui/dialog";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextField } from "@/components/ui/text-field";

type Props = { readonly companyName: string; readonly remove: (input: unknown) => Promise<Answer> };

/** Says what deleting a company means, and does it only for somebody who types its name and a password. */
export function CompanyDeletion({ companyName, remove }: Props) {
  return (
    <div className="grid justify-items-start gap-4">
      <p>
        Deletes {companyName} with all jobs, records, logs, packets and files. Make an export first: nothing
        can be brought back.
      </p>
      <Dialog title={`Delete ${companyName}?`} trigger={<Button variant="danger">Delete the company</Button>}>
        <Question companyName={companyName} remove={remove} />
      </Dialog>
    </div>
  );
}

function Question({ companyName, remove }: Props) {
  const [sent, send, busy] = useSentForm(
    (form) =>
      remove({ companyName: String(form.get("companyName")), password: String(form.get("password")) }),
    () => window.location.assign("/sign-in"),
  );
  const problems = problemsOf(sent);
  return (
    <ActionForm action={send} className="grid gap-4">
      <Refusal form={sent} title="Nothing was deleted" />
      <ul className="grid list-disc gap-1 pl-5">
        <li>Everything is gone at once, for everybody who works here.</li>
        <li>Packets that were sent stay on paper; their private links no longer open.</li>
        <li>Readings that wait on a phone cannot be sent any more.</li>
      </ul>
      <TextField
        name="companyName"
        label={`Type the company's name: ${companyName}`}
        autoComplete="off"
        error={problemOf(problems, "companyName")}
      />
      <TextField
        name="password"
        type="password"
        label="Your password"
        autoComplete="current-password"
        error={problemOf(problems, "password")}
      />
      <div className="flex flex-wrap justify-end gap-3">
        <DialogClose>
          <Button>Keep everything</Button>
        </DialogClose>
        <SubmitButton variant="danger" busy={busy} busyText="Deleting…">
          Delete for good
        </SubmitButton>
      </div>
    </ActionForm>
  );
}
