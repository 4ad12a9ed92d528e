"use client";

import { useState, useTransition } from "react";
import { heard } from "@/components/forms/still-there";
import { Button, TextLink } from "@/components/ui/button";
import { Notice } from "@/components/ui/notice";

type Change = {
  readonly jobId: string;
  readonly number: number;
  readonly customerName: string;
  readonly from: string | null;
  readonly to: string | null;
  readonly findings: readonly {
    readonly title: string;
    readonly from: string | null;
    readonly to: string | null;
  }[];
};
type Preview = {
  readonly looked: number;
  readonly total: number;
  readonly changed: number;
  readonly verdicts: number;
  readonly changes: readonly Change[];
};
type Outcome =
  | { readonly ok: true; readonly value: Preview }
  | { readonly ok: false; readonly message: string };
export type PreviewLimit = (input: unknown) => Promise<Outcome>;

const LOST: Outcome = { ok: false, message: "No connection to the server. Try again when there is one." };

type Props = {
  readonly limitKey: string;
  readonly preview: PreviewLimit;
  /** The seed value in words where the company has its own, for going back to it. */
  readonly seed: string | null;
};

/** Which jobs the value typed above, or the seed value, would judge differently, before it is saved. */
export function LimitPreviewPart({ limitKey, preview, seed }: Props) {
  const [answer, setAnswer] = useState<Outcome | null>(null);
  const [busy, start] = useTransition();
  const ask = (value: string | null) =>
    start(async () => setAnswer(heard(await preview({ key: limitKey, value }).catch(() => LOST))));
  return (
    <div className="grid justify-items-start gap-2">
      <div className="flex flex-wrap gap-3">
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
        {seed === null ? null : (
          <Button variant="quiet" disabled={busy} onClick={() => ask(null)}>
            Show it for {seed}
          </Button>
        )}
      </div>
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

const jobs = (count: number) => (count === 1 ? "1 job" : `${count} jobs`);

function Answered({ preview: { looked, total, changed, verdicts, changes } }: { readonly preview: Preview }) {
  return (
    <>
      <p className="font-semibold">
        {changed === 0 ? "No job would change" : `${jobs(changed)} would change`}, of {looked} looked at.
        {changed === 0 ? null : ` The verdict as a whole: ${verdicts === 0 ? "of none" : `of ${verdicts}`}.`}
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
            :{" "}
            {one.from === one.to
              ? `stays “${one.to ?? "nothing judged"}”`
              : `${one.from ?? "nothing judged"} → ${one.to ?? "nothing judged"}`}
            {one.findings.map(({ title, from, to }, at) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a rule may speak twice in the same words
              <span key={at} className="block pl-4 text-muted">
                {title}: {from ?? "nothing said"} → {to ?? "nothing said"}
              </span>
            ))}
          </li>
        ))}
      </ul>
      {changed > changes.length ? <p>And {changed - changes.length} more.</p> : null}
    </>
  );
}
