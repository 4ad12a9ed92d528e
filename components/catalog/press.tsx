"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { heard } from "@/components/forms/still-there";
import { Button, type ButtonVariant } from "@/components/ui/button";
import { Notice } from "@/components/ui/notice";
import type { Kept } from "./kept";

type Props<T> = {
  readonly children: string;
  /** What it does, where several stand among others. Begins with or holds the text shown. */
  readonly label?: string;
  readonly input: unknown;
  readonly send: (input: unknown) => Promise<Kept<T>>;
  /** Where to go afterwards; `{id}` is what the action answered. Stays when left out. */
  readonly to?: string;
  readonly variant?: ButtonVariant;
};

/** A button that does one thing to the catalog and says when it cannot. */
export function Press<T>({ children, label, input, send, to, variant = "secondary" }: Props<T>) {
  const router = useRouter();
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  return (
    <div className="grid gap-2">
      <Button
        aria-label={label}
        variant={variant}
        busy={busy}
        busyText="Working…"
        onClick={async () => {
          setBusy(true);
          try {
            const answer = heard(await send(input));
            setProblem(answer.ok ? null : answer.message);
            if (answer.ok && to !== undefined) router.push(to.replace("{id}", String(answer.value)));
            if (answer.ok) router.refresh();
          } catch {
            setProblem("No connection to the server. Nothing was changed; try again when there is one.");
          }
          setBusy(false);
        }}
      >
        {children}
      </Button>
      {problem === null ? null : <Notice kind="problem" title={problem} />}
    </div>
  );
}
