"use client";

import { Button, type ButtonVariant } from "@/components/ui/button";
import { ActionForm } from "./action-form";
import { type Answer, useSentForm } from "./use-sent-form";

export type PressProps = {
  readonly act: () => Promise<Answer>;
  /** What it does, where several stand among others. Begins with or holds the text shown. */
  readonly label?: string | undefined;
  readonly busyText?: string;
  readonly variant?: ButtonVariant;
  readonly children: string;
};

const LOST: Answer = {
  ok: false,
  message: "No connection to the server. Nothing was changed; try again when there is one.",
  fields: [],
};

/** One button that does one thing and says when it was refused. */
export function Press({ act, label, busyText = "Working…", variant = "secondary", children }: PressProps) {
  const [sent, send, busy] = useSentForm(() => act().catch(() => LOST));
  return (
    <ActionForm action={send}>
      <Button type="submit" variant={variant} busy={busy} busyText={busyText} aria-label={label}>
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
