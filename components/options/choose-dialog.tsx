"use client";

import { useState } from "react";
import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { Refusal } from "@/components/forms/refusal";
import { problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { Button } from "@/components/ui/button";
import { CheckField } from "@/components/ui/choice-fields";
import { Dialog } from "@/components/ui/dialog";
import { Notice } from "@/components/ui/notice";
import { TextArea } from "@/components/ui/text-field";
import { stagesChangedBy } from "@/lib/domain/options";
import { STAGE_NAMES, type StageKey } from "@/lib/domain/stages";
import type { OptionDeskView, OptionDoors, ShownOption } from "./option-data";

type Props = {
  readonly view: OptionDeskView;
  readonly shown: ShownOption;
  readonly choose: OptionDoors["choose"];
};

const names = (stages: readonly StageKey[]) => stages.map((stage) => STAGE_NAMES[stage]).join(", ");

/** Asks for the reason, and says which records the choice fills before it does. */
export function ChooseDialog({ view, shown, choose }: Props) {
  const [open, setOpen] = useState(false);
  const { option } = shown;
  const changes = stagesChangedBy(view.context.inputs, option.inputs);
  const signed = changes.filter((stage) => view.signed.includes(stage));
  const [form, send, busy] = useSentForm(
    (data) =>
      choose({
        jobId: view.jobId,
        optionId: option.id,
        expectedVersion: option.version,
        reason: data.get("reason"),
        reopenSigned: data.get("reopenSigned") === "yes",
      }),
    () => setOpen(false),
  );
  const isChosen = view.choice?.optionId === option.id;
  return (
    <Dialog
      title={`Choose “${option.label}”`}
      description={
        changes.length === 0
          ? "The records already say this; the reason is kept."
          : `Fills: ${names(changes)}. What else stands in them stays.`
      }
      open={open}
      onOpenChange={setOpen}
      trigger={<Button variant="primary">{isChosen ? "Choose again" : "Choose"}</Button>}
    >
      <ActionForm action={send} className="grid gap-4">
        <Refusal form={form} />
        <TextArea
          name="reason"
          label="Why this one"
          hint={
            view.choice ? `Chosen before: “${view.choice.label}”, because: ${view.choice.reason}` : undefined
          }
          error={problemOf(problemsOf(form), "reason")}
          rows={3}
        />
        {signed.length > 0 ? (
          <Notice kind="information" title={`Signed: ${names(signed)}`}>
            <p>A new revision is opened and filled; the signed revision is kept as it is.</p>
            <CheckField name="reopenSigned" label="Reopen the signed records" />
          </Notice>
        ) : null}
        <div>
          <Button type="submit" variant="primary" busy={busy} busyText="Filling the records…">
            Choose and fill the records
          </Button>
        </div>
      </ActionForm>
    </Dialog>
  );
}
