"use client";

// Longer than usual because a model has many fields and one form sends them together.
import { useRouter } from "next/navigation";
import { useState } from "react";
import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { FormActions, FormSection } from "@/components/forms/form-section";
import { Refusal } from "@/components/forms/refusal";
import { problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { SelectField } from "@/components/ui/choice-fields";
import { NumberField } from "@/components/ui/number-field";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextField } from "@/components/ui/text-field";
import {
  BOARD_SETTINGS,
  COMPRESSOR_KIND_NAMES,
  COMPRESSOR_KINDS,
  type EquipmentModel,
} from "@/lib/domain/catalog";
import { HELD_COIL_FIELDS, OPTIONAL_SECTIONS, valuesOf } from "./equipment-fields";
import type { Kept } from "./kept";
import { RowsEditor, type TextRow } from "./rows-editor";

type Props = {
  readonly model: EquipmentModel | null;
  readonly send: (input: unknown) => Promise<Kept<string>>;
};

/** Everything about a model but its tables, which come by paste or file. */
export function EquipmentForm({ model, send }: Props) {
  const router = useRouter();
  const [kind, setKind] = useState<string>(model?.compressorKind ?? "");
  const [settings, setSettings] = useState<readonly TextRow[]>(
    model?.data.capacitySettings.map(({ name, tons, firstStageTable }) => ({
      name,
      tons: String(tons),
      firstStageTable: firstStageTable ?? "",
    })) ?? [{}],
  );
  const [ceiling, setCeiling] = useState<readonly TextRow[]>(
    model?.data.heldCoil?.fullCapacity.map((line) => ({
      outdoorDbF: String(line.outdoorDbF),
      capacityBtuh: String(line.capacityBtuh),
    })) ?? [{}],
  );
  const holdsCoil = kind === "coil_temperature_held";
  const [sent, submit, busy] = useSentForm(async (form) => {
    const text = (name: string) => String(form.get(name) ?? "");
    const answer = await send({
      modelId: model?.id ?? null,
      compressorKind: kind,
      ...Object.fromEntries(
        ["maker", "name", "modelNumber", "nominalTons", "refrigerant", "sourceNote", "ratedAirflowCfm"].map(
          (name) => [name, text(name)],
        ),
      ),
      ...Object.fromEntries(
        OPTIONAL_SECTIONS.flatMap(({ fields }) => fields.map(({ name }) => [name, text(name)])),
      ),
      capacitySettings: settings.map((row) => ({ name: "", tons: "", firstStageTable: "", ...row })),
      boardLabels: Object.fromEntries(
        Object.keys(BOARD_SETTINGS).map((key) => [key, text(`boardLabels.${key}`)]),
      ),
      heldCoil: holdsCoil
        ? {
            ...Object.fromEntries(HELD_COIL_FIELDS.map(({ name }) => [name, text(`heldCoil.${name}`)])),
            fullCapacity: ceiling.map((row) => ({ outdoorDbF: "", capacityBtuh: "", ...row })),
          }
        : null,
    });
    if (answer.ok) router.push(`/catalog/${answer.value}`);
    return answer;
  });
  const problem = (field: string) => problemOf(problemsOf(sent), field);
  const values = valuesOf(model);
  return (
    <ActionForm action={submit} className="grid max-w-4xl gap-5">
      <Refusal form={sent} />
      <FormSection title="What it is">
        <TextField name="maker" label="Maker" defaultValue={model?.maker} error={problem("maker")} />
        <TextField name="name" label="Name" defaultValue={model?.name} error={problem("name")} />
        <TextField
          name="modelNumber"
          label="Model number"
          optional
          defaultValue={model?.modelNumber}
          error={problem("modelNumber")}
        />
        <SelectField
          name="compressorKind"
          label="Compressor"
          placeholder="Choose"
          options={COMPRESSOR_KINDS.map((value) => ({ value, label: COMPRESSOR_KIND_NAMES[value] }))}
          value={kind}
          onChange={(event) => setKind(event.target.value)}
          error={problem("compressorKind")}
        />
        <NumberField
          name="nominalTons"
          label="Nominal capacity"
          unit="tons"
          defaultValue={model?.nominalTons}
          error={problem("nominalTons")}
        />
        <NumberField
          name="ratedAirflowCfm"
          label="Rated airflow"
          unit="cfm"
          defaultValue={values.ratedAirflowCfm}
          error={problem("ratedAirflowCfm")}
        />
        <TextField
          name="refrigerant"
          label="Refrigerant"
          hint="Such as R-410A. Flammable refrigerants ask for cautions at startup."
          defaultValue={model?.refrigerant}
          error={problem("refrigerant")}
        />
        <TextField
          name="sourceNote"
          label="Where the data come from"
          optional
          hint="The maker's document and its date."
          error={problem("sourceNote")}
        />
      </FormSection>
      <RowsEditor
        name="capacitySettings"
        title="Capacity settings, smallest first"
        columns={[
          { key: "name", label: "Setting, as its rows of the table are named", unit: null },
          { key: "tons", label: "Capacity", unit: "tons" },
          { key: "firstStageTable", label: "First-stage rows, if printed apart", unit: null },
        ]}
        rows={settings}
        onRows={setSettings}
        problem={problem}
        addText="Add a capacity setting"
      />
      {holdsCoil ? (
        <>
          <FormSection
            title="Held coil"
            intro="Here airflow decides capacity; these numbers say how the compressor follows it."
          >
            {HELD_COIL_FIELDS.map(({ name, label, unit }) => (
              <NumberField
                key={name}
                name={`heldCoil.${name}`}
                label={label}
                unit={unit}
                defaultValue={values[name]}
                error={problem(`heldCoil.${name}`)}
              />
            ))}
          </FormSection>
          <RowsEditor
            name="heldCoil.fullCapacity"
            title="Most capacity by outdoor temperature"
            columns={[
              { key: "outdoorDbF", label: "Outdoor dry bulb", unit: "°F" },
              { key: "capacityBtuh", label: "Most capacity", unit: "Btu/h" },
            ]}
            rows={ceiling}
            onRows={setCeiling}
            problem={problem}
            addText="Add a temperature"
          />
        </>
      ) : null}
      {OPTIONAL_SECTIONS.map(({ title, fields }) => (
        <FormSection key={title} title={title} intro="Leave empty what the maker does not publish.">
          {fields.map(({ name, label, unit }) => (
            <NumberField
              key={name}
              name={name}
              label={label}
              unit={unit}
              optional
              defaultValue={values[name]}
              error={problem(name)}
            />
          ))}
        </FormSection>
      ))}
      <FormSection title="Board settings" intro="The maker's own label for each, for the crew's card.">
        {Object.entries(BOARD_SETTINGS).map(([key, label]) => (
          <TextField
            key={key}
            name={`boardLabels.${key}`}
            label={label}
            optional
            defaultValue={model?.data.boardLabels?.[key]}
            error={problem(`boardLabels.${key}`)}
          />
        ))}
      </FormSection>
      <FormActions>
        <SubmitButton busy={busy}>{model === null ? "Add model" : "Save as a new version"}</SubmitButton>
        {model === null ? null : (
          <p className="text-sm text-muted">Jobs that rest on version {model.version} keep it.</p>
        )}
      </FormActions>
    </ActionForm>
  );
}
