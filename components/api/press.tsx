"use client";

import { ActionForm } from "@/components/forms/action-form";
import { type Answer, useSentForm } from "@/components/forms/use-sent-form";
import { Button } from "@/components/ui/button";

type PressProps = {
  readonly act: () => Promise<Answer>;
  readonly label: string;
  readonly children: string;
};

/** One button that does one thing and says when it was refused. */
export function Press({ act, label, children }: PressProps) {
  const [sent, send, busy] = useSentForm(act);
  return (
    <ActionForm action={send}>
      <Button type="submit" busy={busy} aria-label={label}>
        {children}
      </Button>
      {sent.state === "refused" ? (
        <p role="alert" className="mt-1 text-sm font-semibold text-short">
          {sent.message}
        </p>
      ) : null}
    </ActionForm>
  );
}
