"use client";

import { useActionState } from "react";
import { ActionForm } from "@/components/forms/action-form";
import { Notice } from "@/components/ui/notice";
import { SubmitButton } from "@/components/ui/submit-button";

type Answer =
  | { readonly ok: true; readonly value: string }
  | { readonly ok: false; readonly message: string };
type Props = { readonly jobId: string; readonly make: (input: unknown) => Promise<Answer> };

export function MakePacket({ jobId, make }: Props) {
  const [answer, send, busy] = useActionState((_: Answer | null) => make({ jobId }), null);
  return (
    <ActionForm action={() => send()} className="grid justify-items-start gap-3">
      {answer?.ok ? (
        <Notice kind="done" title="The packet is ready. It stands first in the list below." />
      ) : null}
      {answer && !answer.ok ? <Notice kind="problem" title={answer.message} /> : null}
      <SubmitButton busy={busy} busyText="Making…">
        Make the packet
      </SubmitButton>
    </ActionForm>
  );
}
