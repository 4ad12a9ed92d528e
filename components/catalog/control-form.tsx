"use client";

import { useRouter } from "next/navigation";
import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { FormActions, FormSection } from "@/components/forms/form-section";
import { Refusal } from "@/components/forms/refusal";
import { problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { SelectField } from "@/components/ui/choice-fields";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextField } from "@/components/ui/text-field";
import { BOARD_SETTINGS, type ControlModel } from "@/lib/domain/catalog";
import { STAGE_FIELDS } from "@/lib/domain/stages";
import type { Kept } from "./kept";

/** Readings of the control setup, which no thermostat's menu holds. */
const READINGS = /^(thermostat|trusted)/;

/** Our words for a thermostat's settings: those of the control setup that a person sets there; the board's are the model's. */
const SETTINGS = Object.entries(STAGE_FIELDS.control_setup).filter(
  ([key, field]) =>
    field.kind !== "reference" && field.kind !== "text" && !READINGS.test(key) && !(key in BOARD_SETTINGS),
);

type Props = {
  readonly control: ControlModel | null;
  readonly send: (input: unknown) => Promise<Kept<string>>;
};

/** A thermostat: how many cooling stages, and the maker's own label beside each of our settings. */
export function ControlForm({ control, send }: Props) {
  const router = useRouter();
  const [sent, submit, busy] = useSentForm(async (form) => {
    const text = (name: string) => String(form.get(name) ?? "");
    const answer = await send({
      controlId: control?.id ?? null,
      maker: text("maker"),
      name: text("name"),
      stages: text("stages"),
      makerLabels: Object.fromEntries(SETTINGS.map(([key]) => [key, text(`makerLabels.${key}`)])),
    });
    if (answer.ok) router.push("/catalog#controls");
    return answer;
  });
  const problem = (field: string) => problemOf(problemsOf(sent), field);
  return (
    <ActionForm action={submit} className="grid max-w-4xl gap-5">
      <Refusal form={sent} />
      <FormSection title="What it is">
        <TextField name="maker" label="Maker" defaultValue={control?.maker} error={problem("maker")} />
        <TextField name="name" label="Name" defaultValue={control?.name} error={problem("name")} />
        <SelectField
          name="stages"
          label="Cooling stages it can run"
          placeholder="Choose"
          options={[
            { value: "1", label: "one" },
            { value: "2", label: "two" },
          ]}
          defaultValue={control ? String(control.data.stages) : ""}
          error={problem("stages")}
        />
      </FormSection>
      <FormSection
        title="The maker's labels"
        intro="As the maker prints them on screen or in the manual. The crew card shows them beside our words."
      >
        {SETTINGS.map(([key, field]) => (
          <TextField
            key={key}
            name={`makerLabels.${key}`}
            label={field.label}
            optional
            defaultValue={control?.data.makerLabels[key]}
            error={problem(`makerLabels.${key}`)}
          />
        ))}
      </FormSection>
      <FormActions>
        <SubmitButton busy={busy}>
          {control === null ? "Add thermostat" : "Save as a new version"}
        </SubmitButton>
      </FormActions>
    </ActionForm>
  );
}
