"use client";

import { useRouter } from "next/navigation";
import { useEffect, useState, useTransition } from "react";
import { heard } from "@/components/forms/still-there";
import { Button } from "@/components/ui/button";
import { Notice } from "@/components/ui/notice";

export type HoldAnswer = { readonly ok: true } | { readonly ok: false; readonly message: string };

const LOOK_AGAIN_MS = 2_000;

/** Asks for the comparison and looks how far it is until it is there. */
export function HoldButton({
  jobId,
  importId,
  working,
  again,
  hold,
}: {
  readonly jobId: string;
  readonly importId: string;
  readonly working: { readonly done: number; readonly total: number | null } | null;
  readonly again: boolean;
  readonly hold: (input: unknown) => Promise<HoldAnswer>;
}) {
  const router = useRouter();
  const [asking, start] = useTransition();
  const [problem, setProblem] = useState<string | null>(null);
  const isWorking = working !== null;
  useEffect(() => {
    if (!isWorking) return;
    const timer = setInterval(() => {
      if (document.visibilityState === "visible") router.refresh();
    }, LOOK_AGAIN_MS);
    return () => clearInterval(timer);
  }, [isWorking, router]);
  const ask = () =>
    start(async () => {
      const answer = heard(await hold({ jobId, importId }));
      setProblem(answer.ok ? null : answer.message);
      router.refresh();
    });
  return (
    <div className="no-print grid gap-2">
      <div className="flex flex-wrap items-center gap-3">
        <Button onClick={ask} disabled={asking || isWorking}>
          {again ? "Hold them against each other again" : "Hold the forecast against this log"}
        </Button>
        <span role="status" className="text-sm text-muted">
          {isWorking ? farText(working) : ""}
        </span>
      </div>
      {problem === null ? null : <Notice kind="problem" title={problem} />}
    </div>
  );
}

function farText({ done, total }: { readonly done: number; readonly total: number | null }): string {
  return total === null
    ? "Waits for the server’s background work…"
    : `Working: ${done} of ${total} steps. You may leave this page.`;
}
