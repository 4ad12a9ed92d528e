"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { FormActions, FormSection } from "@/components/forms/form-section";
import { Refusal } from "@/components/forms/refusal";
import { problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { SubmitButton } from "@/components/ui/submit-button";
import { DateField, TextField } from "@/components/ui/text-field";
import { type Instrument, MEASURED_QUANTITIES } from "@/lib/domain/catalog";
import type { Kept } from "./kept";
import { RowsEditor, type TextRow } from "./rows-editor";

type Props = {
  readonly instrument: (Instrument & { readonly version: number }) | null;
  readonly send: (input: unknown) => Promise<Kept<string>>;
};

const COLUMNS = [
  {
    key: "quantity",
    label: "Quantity",
    unit: null,
    options: MEASURED_QUANTITIES.map((value) => ({ value, label: value })),
  },
  { key: "unit", label: "Unit", unit: null },
  { key: "plusMinus", label: "Plus or minus, in that unit", unit: "" },
  { key: "percentOfReading", label: "And of the reading", unit: "%" },
  {
    key: "statedAs",
    label: "Stated as",
    unit: null,
    options: [
      { value: "limits", label: "limits (±)" },
      { value: "standard uncertainty", label: "standard uncertainty" },
    ],
  },
];

/** An instrument with its accuracy per quantity and its calibration. */
export function InstrumentForm({ instrument, send }: Props) {
  const router = useRouter();
  const [accuracy, setAccuracy] = useState<readonly TextRow[]>(
    instrument?.accuracy.map((line) => ({
      ...line,
      plusMinus: String(line.plusMinus),
      percentOfReading: String(line.percentOfReading),
    })) ?? [{ percentOfReading: "0", statedAs: "limits" }],
  );
  const [sent, submit, busy] = useSentForm(async (form) => {
    const text = (name: string) => String(form.get(name) ?? "");
    const answer = await send({
      instrumentId: instrument?.id ?? null,
      expectedVersion: instrument?.version ?? null,
      ...Object.fromEntries(
        ["name", "kind", "serialNumber", "calibratedOn", "calibrationDueOn"].map((name) => [
          name,
          text(name),
        ]),
      ),
      accuracy: accuracy.map((row) => ({
        quantity: "",
        unit: "",
        plusMinus: "",
        percentOfReading: "0",
        statedAs: "limits",
        ...row,
      })),
    });
    if (answer.ok) router.push("/catalog#instruments");
    return answer;
  });
  const problem = (field: string) => problemOf(problemsOf(sent), field);
  return (
    <ActionForm action={submit} className="grid max-w-4xl gap-5">
      <Refusal form={sent} />
      <FormSection title="What it is">
        <TextField name="name" label="Name" defaultValue={instrument?.name} error={problem("name")} />
        <TextField
          name="kind"
          label="Kind"
          hint="Such as psychrometer, manometer, flow plate."
          defaultValue={instrument?.kind}
          error={problem("kind")}
        />
        <TextField
          name="serialNumber"
          label="Serial number"
          optional
          defaultValue={instrument?.serialNumber}
          error={problem("serialNumber")}
        />
      </FormSection>
      <RowsEditor
        name="accuracy"
        title="Accuracy, as the maker or the calibration states it"
        columns={COLUMNS}
        rows={accuracy}
        onRows={setAccuracy}
        problem={problem}
        addText="Add a quantity"
      />
      <FormSection title="Calibration" intro="A new date keeps the old one on the trail.">
        <DateField
          name="calibratedOn"
          label="Calibrated on"
          optional
          defaultValue={instrument?.calibratedOn ?? ""}
          error={problem("calibratedOn")}
        />
        <DateField
          name="calibrationDueOn"
          label="Calibration due"
          optional
          defaultValue={instrument?.calibrationDueOn ?? ""}
          error={problem("calibrationDueOn")}
        />
      </FormSection>
      <FormActions>
        <SubmitButton busy={busy}>{instrument === null ? "Add instrument" : "Save"}</SubmitButton>
      </FormActions>
    </ActionForm>
  );
}
