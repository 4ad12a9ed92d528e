"use client";

import { useState } from "react";
import { ActionForm } from "@/components/forms/action-form";
import { useSentForm } from "@/components/forms/use-sent-form";
import { Button } from "@/components/ui/button";
import { Dialog, DialogClose } from "@/components/ui/dialog";
import { Notice } from "@/components/ui/notice";
import { SubmitButton } from "@/components/ui/submit-button";
import type { MemberRow, Send } from "./member-actions";

type Props = { readonly member: MemberRow; readonly remove: Send };

/** Says what ending a membership does, then does it. */
export function MemberRemoval({ member, remove }: Props) {
  const [open, setOpen] = useState(false);
  return (
    <Dialog
      title={`Remove ${member.name}?`}
      open={open}
      onOpenChange={setOpen}
      trigger={
        <Button variant="danger" aria-label={`Remove ${member.name}`}>
          Remove
        </Button>
      }
    >
      <Question member={member} remove={remove} onDone={() => setOpen(false)} />
    </Dialog>
  );
}

function Question({ member, remove, onDone }: Props & { readonly onDone: () => void }) {
  const [sent, send, busy] = useSentForm(() => remove({ userId: member.userId }), onDone);
  return (
    <ActionForm action={send} className="grid gap-4">
      {sent.state === "refused" ? (
        <Notice kind="problem" title={`${member.name} was not removed`}>
          {sent.message}
        </Notice>
      ) : null}
      <ul className="grid list-disc gap-1 pl-5">
        <li>{member.isYou ? "You lose" : `${member.name} loses`} access to this company at the next step.</li>
        <li>Assignments to jobs end. Jobs that are left without a tech need a new one.</li>
        <li>Records, readings and signatures stay, under the same name.</li>
        <li>A new invitation to {member.email} gives access again.</li>
      </ul>
      <div className="flex flex-wrap justify-end gap-3">
        <DialogClose>
          <Button>Keep</Button>
        </DialogClose>
        <SubmitButton variant="danger" busy={busy} busyText="Removing…">
          Remove {member.name}
        </SubmitButton>
      </div>
    </ActionForm>
  );
}
