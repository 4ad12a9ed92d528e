"use client";

import { useRef, useState } from "react";
import { ErrorSummary, problemOf } from "@/components/forms/error-summary";
import { FormActions, FormSection } from "@/components/forms/form-section";
import { type CatalogChoices, choicesWith } from "@/components/stage/choices";
import { StageFields } from "@/components/stage/stage-fields";
import { type TypedValues, typedValues } from "@/components/stage/typed-values";
import { Button } from "@/components/ui/button";
import { Card } from "@/components/ui/card";
import { SaveState, type SaveStateProps } from "@/components/ui/save-state";
import { TextField } from "@/components/ui/text-field";
import type { EquipmentModel } from "@/lib/domain/catalog";
import { fieldGroups } from "@/lib/domain/fields";
import { type Option, optionFields } from "@/lib/domain/options";
import type { FieldProblem } from "@/lib/domain/problems";
import type { Answer } from "./option-data";

type Props = {
  readonly option: Option;
  readonly model: EquipmentModel | null;
  readonly catalog: CatalogChoices;
  readonly onTyped: (typed: TypedValues) => void;
  readonly save: (label: string, inputs: TypedValues) => Promise<Answer>;
  readonly close: () => void;
};

/** Changes one option; the table above follows while typing. */
export function OptionEditor({ option, model, catalog, onTyped, save, close }: Props) {
  const form = useRef<HTMLFormElement>(null);
  const [state, setState] = useState<SaveStateProps>({ state: "unchanged" });
  const [problems, setProblems] = useState<readonly FieldProblem[]>([]);
  const choices = choicesWith(catalog, model);
  const send = async () => {
    if (!form.current) return;
    setState({ state: "saving" });
    const data = new FormData(form.current);
    const answer = await save(String(data.get("label") ?? ""), typedValues(optionFields, data));
    if (answer.ok) return close();
    setProblems(answer.fields);
    setState({ state: "not saved", why: answer.message });
  };
  return (
    <Card title={`Change “${option.label}”`}>
      <form
        ref={form}
        noValidate
        onInput={(event) => onTyped(typedValues(optionFields, new FormData(event.currentTarget)))}
        onSubmit={(event) => {
          event.preventDefault();
          void send();
        }}
      >
        <ErrorSummary problems={problems} />
        <div className="grid gap-6">
          <FormSection title="Name">
            <TextField
              name="label"
              label="Name of this option"
              error={problemOf(problems, "label")}
              defaultValue={option.label}
            />
          </FormSection>
          <StageFields
            groups={fieldGroups(optionFields)}
            inputs={option.inputs as Readonly<Record<string, unknown>>}
            problems={problems}
            disabled={false}
            choices={choices}
          />
        </div>
        <FormActions>
          <Button type="submit" variant="primary" busy={state.state === "saving"} busyText="Saving…">
            Save option
          </Button>
          <Button onClick={close}>Cancel</Button>
          <SaveState {...state} />
        </FormActions>
      </form>
    </Card>
  );
}
