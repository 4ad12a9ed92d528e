"use client";

import { useState } from "react";
import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { Refusal } from "@/components/forms/refusal";
import { type Answer, problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { Button } from "@/components/ui/button";
import { Dialog } from "@/components/ui/dialog";
import { NumberField } from "@/components/ui/number-field";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextArea } from "@/components/ui/text-field";
import { numberText } from "@/lib/charts/number-text";
import { LimitPreviewPart, type PreviewLimit } from "./limit-preview-part";
import type { LimitRow } from "./limit-row";

export type LimitDoors = {
  readonly setLimit: (input: unknown) => Promise<Answer>;
  readonly previewLimit: PreviewLimit;
};

type Props = { readonly limit: LimitRow; readonly doors: LimitDoors };

/** Changes one limit with its reason, or goes back to the seed value. */
export function LimitDialog({ limit, doors }: Props) {
  const [open, setOpen] = useState(false);
  return (
    <Dialog
      title={limit.title}
      description="Jobs are judged by the new value from now on. A signed record also keeps the findings it was signed with."
      open={open}
      onOpenChange={setOpen}
      trigger={
        <Button variant="quiet" aria-label={`Change: ${limit.title}`}>
          Change
        </Button>
      }
    >
      <LimitForm limit={limit} doors={doors} onDone={() => setOpen(false)} />
    </Dialog>
  );
}

function LimitForm({ limit, doors, onDone }: Props & { readonly onDone: () => void }) {
  const { key, unit, decimals, inForce, min, max, seed, isOwn } = limit;
  const [sent, send, busy] = useSentForm(
    (form) =>
      doors.setLimit({
        key,
        value: form.get("do") === "seed" ? null : form.get("value"),
        reason: form.get("reason"),
      }),
    onDone,
  );
  const problem = (field: string) => problemOf(problemsOf(sent), field);
  const text = (value: number) => `${numberText(value, decimals)} ${unit}`.trim();
  return (
    <ActionForm action={send} className="grid gap-4">
      <Refusal form={sent} title="Not changed yet" />
      <NumberField
        name="value"
        label="New value"
        unit={unit}
        defaultValue={numberText(inForce, decimals)}
        hint={`From ${text(min)} to ${text(max)}. The seed value is ${text(seed)}.`}
        error={problem("value")}
      />
      <LimitPreviewPart
        limitKey={key}
        preview={doors.previewLimit}
        seed={isOwn ? `the seed value, ${text(seed)}` : null}
      />
      <TextArea
        name="reason"
        label="Reason"
        hint="Stays with the change, for whoever reads a verdict later."
        required
        rows={3}
        error={problem("reason")}
      />
      <div className="flex flex-wrap gap-3">
        <SubmitButton busy={busy} name="do" value="set">
          Change
        </SubmitButton>
        {isOwn ? (
          <Button type="submit" name="do" value="seed" disabled={busy}>
            Go back to {text(seed)}
          </Button>
        ) : null}
      </div>
    </ActionForm>
  );
}
