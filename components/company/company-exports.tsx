"use client";

import { ActionForm } from "@/components/forms/action-form";
import { Refusal } from "@/components/forms/refusal";
import { type Answer, useSentForm } from "@/components/forms/use-sent-form";
import { SubmitButton } from "@/components/ui/submit-button";
import { momentText } from "@/lib/domain/date-text";

type Export = {
  readonly id: string;
  readonly state: "waiting" | "done";
  readonly sizeBytes: number | null;
  readonly expiresAt: string | null;
  readonly createdAt: string;
  readonly createdByName: string;
};
type Props = {
  readonly exports: readonly Export[];
  readonly making: boolean;
  readonly timeZone: string;
  readonly make: (input: unknown) => Promise<Answer>;
};

/** Asks for an archive of everything and offers those that are ready. */
export function CompanyExports({ exports, making, timeZone, make }: Props) {
  const [sent, send, busy] = useSentForm(() => make({}));
  return (
    <div className="grid gap-4">
      <p>
        One ZIP with every table as CSV and every photograph, report, packet and log as it was stored. It is
        made in the background and kept for a week. It holds your customers' addresses: keep it safe.
      </p>
      <ActionForm action={send} className="grid justify-items-start gap-2">
        <Refusal form={sent} title="Not begun" />
        <SubmitButton busy={busy || making} busyText="An export is being made…">
          Make an export
        </SubmitButton>
      </ActionForm>
      {exports.length === 0 ? null : (
        <ul aria-label="Exports, newest first" className="border-t border-rule">
          {exports.map((one) => (
            <li key={one.id} className="flex flex-wrap items-baseline gap-x-4 border-b border-rule py-2">
              <span>
                {momentText(one.createdAt, timeZone)}, asked for by {one.createdByName}
              </span>
              <Ready one={one} timeZone={timeZone} making={making} />
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

function Ready({ one, timeZone, making }: Pick<Props, "timeZone" | "making"> & { readonly one: Export }) {
  if (one.state !== "done" || one.expiresAt === null)
    return (
      <span className="text-muted">
        {making ? "being made" : "not finished: see background work for the reason"}
      </span>
    );
  return (
    <>
      <a className="underline" href={`/api/company/exports/${one.id}`} download>
        Download ({sizeText(one.sizeBytes ?? 0)})
      </a>
      <span className="text-sm text-muted">until {momentText(one.expiresAt, timeZone)}</span>
    </>
  );
}

/** Bytes in words a person compares with a disk's. */
function sizeText(bytes: number): string {
  if (bytes < 1_000_000) return `${Math.max(1, Math.round(bytes / 1_000))} kB`;
  return bytes < 1e9 ? `${(bytes / 1e6).toFixed(1)} MB` : `${(bytes / 1e9).toFixed(1)} GB`;
}
