"use client";

import { ActionForm } from "@/components/forms/action-form";
import { Refusal } from "@/components/forms/refusal";
import { type Answer, useSentForm } from "@/components/forms/use-sent-form";
import { SubmitButton } from "@/components/ui/submit-button";
import type { JobFile } from "@/lib/domain/field-bundle";

type Props = {
  readonly jobId: string;
  readonly photo: JobFile;
  readonly ask: (input: unknown) => Promise<Answer>;
};

/** The camera's own picture: asked for, on its way, here, or why it cannot come. */
export function AskOriginal({ jobId, photo, ask }: Props) {
  const [sent, submit, busy] = useSentForm(() => ask({ jobId, photoId: photo.id }));
  switch (photo.original) {
    case "asked":
      return <p className="text-xs">Original asked for. The phone hears of it with its next contact.</p>;
    case "received":
      return (
        <p className="text-xs">
          Original received:{" "}
          <a className="underline" href={`/api/jobs/${jobId}/photos/${photo.id}?size=camera`}>
            open it
          </a>
        </p>
      );
    case "gone":
      return <p className="text-xs">The original is no longer on the phone.</p>;
    case "too large":
      return <p className="text-xs">The original is larger than 20 MB and stays on the phone.</p>;
    case null:
      return (
        <ActionForm action={submit} className="grid gap-1">
          <Refusal form={sent} title="Not asked" />
          <div>
            <SubmitButton busy={busy} busyText="Asking…" variant="quiet">
              Ask for the original
            </SubmitButton>
          </div>
        </ActionForm>
      );
  }
}
