"use client";

import { ActionForm } from "@/components/forms/action-form";
import { Refusal } from "@/components/forms/refusal";
import { type Answer, useSentForm } from "@/components/forms/use-sent-form";
import { SubmitButton } from "@/components/ui/submit-button";

export type TryAgainAction = (input: unknown) => Promise<Answer>;
type Props = { readonly workId: string; readonly title: string; readonly tryAgain: TryAgainAction };

export function TryAgain({ workId, title, tryAgain }: Props) {
  const [sent, send, busy] = useSentForm(() => tryAgain({ workId }));
  return (
    <ActionForm action={send} className="grid content-start gap-2">
      <Refusal form={sent} title="Not begun" />
      <SubmitButton busy={busy} variant="secondary" aria-label={`Try again: ${title}`}>
        Try again
      </SubmitButton>
    </ActionForm>
  );
}
