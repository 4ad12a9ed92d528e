"use client";

import { useState, useTransition } from "react";
import { Button, TextLink } from "@/components/ui/button";
import { Notice } from "@/components/ui/notice";

type Change = {
  readonly jobId: string;
  readonly number: number;
  readonly customerName: string;
  readonly from: string | null;
  readonly to: string | null;
};
type Preview = {
  readonly looked: number;
  readonly total: number;
  readonly changed: number;
  readonly changes: readonly Change[];
};
type Outcome =
  | { readonly ok: true; readonly value: Preview }
  | { readonly ok: false; readonly message: string };
export type PreviewLimit = (input: unknown) => Promise<Outcome>;

const LOST: Outcome = { ok: false, message: "No connection to the server. Try again when there is one." };

/** Which jobs the value typed above would judge differently, before it is saved. */
export function LimitPreviewPart({
  limitKey,
  preview,
}: {
  readonly limitKey: string;
  readonly preview: PreviewLimit;
}) {
  const [answer, setAnswer] = useState<Outcome | null>(null);
  const [busy, start] = useTransition();
  const ask = (value: string) =>
    start(async () => setAnswer(await preview({ key: limitKey, value }).catch(() => LOST)));
  return (
    <div className="grid justify-items-start gap-2">
      <Button
        busy={busy}
        busyText="Judging…"
        onClick={(event) => {
          const typed = event.currentTarget.closest("form")?.elements.namedItem("value");
          ask(typed instanceof HTMLInputElement ? typed.value : "");
        }}
      >
        Show which jobs change
      </Button>
      <div aria-live="polite" className="w-full text-sm">
        {answer === null ? null : answer.ok ? (
          <Answered preview={answer.value} />
        ) : (
          <Notice kind="problem" title={answer.message} />
        )}
      </div>
    </div>
  );
}

function Answered({ preview: { looked, total, changed, changes } }: { readonly preview: Preview }) {
  const of =
    changed === 1 ? "The verdict of 1 job would change" : `The verdicts of ${changed} jobs would change`;
  return (
    <>
      <p className="font-semibold">
        {changed === 0 ? "No verdict would change" : of}, of {looked} looked at.
      </p>
      {looked < total ? (
        <p>
          The company has {total} jobs with records; the others are judged in the background after the change.
        </p>
      ) : null}
      <ul className="mt-1 max-h-48 overflow-auto">
        {changes.map((one) => (
          <li key={one.jobId}>
            <TextLink href={`/jobs/${one.jobId}`}>
              {one.number} {one.customerName}
            </TextLink>
            : {one.from ?? "nothing judged"} → {one.to ?? "nothing judged"}
          </li>
        ))}
      </ul>
      {changed > changes.length ? <p>And {changed - changes.length} more.</p> : null}
    </>
  );
}
