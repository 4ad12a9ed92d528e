"use client";

import { useRef, useState } from "react";
import { ErrorSummary, problemOf } from "@/components/forms/error-summary";
import { FormActions, FormSection } from "@/components/forms/form-section";
import { type CatalogChoices, choicesWith } from "@/components/stage/choices";
import { StageFields } from "@/components/stage/stage-fields";
import { type TypedValues, typedValues } from "@/components/stage/typed-values";
import { Button } from "@/components/ui/button";
import { Card } from "@/components/ui/card";
import { SaveState } from "@/components/ui/save-state";
import { TextField } from "@/components/ui/text-field";
import type { EquipmentModel } from "@/lib/domain/catalog";
import { fieldGroups } from "@/lib/domain/fields";
import { type Option, optionFields } from "@/lib/domain/options";
import type { Answer } from "./option-data";
import { type OptionEntry, useOptionAutosave } from "./use-option-autosave";

type Props = {
  readonly option: Option;
  readonly model: EquipmentModel | null;
  readonly catalog: CatalogChoices;
  readonly onTyped: (typed: TypedValues) => void;
  readonly save: (entry: OptionEntry, expectedVersion: number) => Promise<Answer>;
  readonly close: () => void;
};

/** Changes one option and saves it while it is typed; the table above follows at once. */
export function OptionEditor({ option, model, catalog, onTyped, save, close }: Props) {
  const form = useRef<HTMLFormElement>(null);
  // As it was opened: a save must not take what is being typed out of the form.
  const [opened] = useState(option);
  const read = (): OptionEntry => {
    const data = new FormData(form.current ?? undefined);
    return { label: String(data.get("label") ?? ""), inputs: typedValues(optionFields, data) };
  };
  const { state, problems, touch, send, putBack } = useOptionAutosave(opened, save);
  const choices = choicesWith(catalog, model);
  return (
    <Card title={`Change “${opened.label}”`}>
      <form
        ref={form}
        noValidate
        onInput={() => {
          const entry = read();
          onTyped(entry.inputs);
          touch(entry);
        }}
        onSubmit={async (event) => {
          event.preventDefault();
          if (await send()) close();
        }}
      >
        <ErrorSummary problems={problems} />
        <div className="grid gap-6">
          <FormSection title="Name">
            <TextField
              name="label"
              label="Name of this option"
              error={problemOf(problems, "label")}
              defaultValue={opened.label}
            />
          </FormSection>
          <StageFields
            groups={fieldGroups(optionFields)}
            inputs={opened.inputs as Readonly<Record<string, unknown>>}
            problems={problems}
            disabled={false}
            choices={choices}
          />
        </div>
        <FormActions>
          <Button type="submit" variant="primary" busy={state.state === "saving"} busyText="Saving…">
            Save option
          </Button>
          <Button
            onClick={async () => {
              if (await putBack()) close();
            }}
          >
            Put back as it was
          </Button>
          <SaveState {...state} />
        </FormActions>
      </form>
    </Card>
  );
}
