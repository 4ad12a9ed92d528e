"use client";

import { useDeferredValue, useEffect, useRef, useState } from "react";
import { FindingList } from "@/components/findings/finding-list";
import { ErrorSummary, problemOf } from "@/components/forms/error-summary";
import { FormActions, FormSection } from "@/components/forms/form-section";
import { Button } from "@/components/ui/button";
import { Card } from "@/components/ui/card";
import { SaveState, type SaveStateProps } from "@/components/ui/save-state";
import type { EquipmentModel } from "@/lib/domain/catalog";
import { evaluateJob, type JobContext } from "@/lib/domain/evaluate";
import { type FieldDefs, fieldGroups } from "@/lib/domain/fields";
import type { FieldProblem } from "@/lib/domain/problems";
import type { StageInputs, StageKey } from "@/lib/domain/stages";
import { type CatalogChoices, choicesWith } from "./choices";
import { ConflictNotice } from "./conflict-notice";
import { type FieldValue, StageField } from "./stage-field";
import { readableValues, type TypedValues, typedValues } from "./typed-values";

export type SaveAnswer =
  | { readonly ok: true; readonly value: { readonly version: number } }
  | {
      readonly ok: false;
      readonly code: string;
      readonly message: string;
      readonly fields: readonly FieldProblem[];
      readonly details: Readonly<Record<string, unknown>>;
    };

type Props = {
  readonly jobId: string;
  readonly stage: StageKey;
  readonly fields: FieldDefs;
  readonly inputs: StageInputs[StageKey];
  readonly version: number | null;
  readonly context: JobContext;
  readonly catalog: CatalogChoices;
  readonly mayEdit: boolean;
  readonly save: (input: unknown) => Promise<SaveAnswer>;
  readonly readModel: (input: unknown) => Promise<ModelAnswer>;
};

type ModelAnswer = { readonly ok: true; readonly value: EquipmentModel } | { readonly ok: false };

/** A stage record: the form left, what follows from it right, live while typing. */
export function StageForm({
  jobId,
  stage,
  fields,
  inputs,
  version,
  context,
  catalog,
  mayEdit,
  save,
  readModel,
}: Props) {
  const form = useRef<HTMLFormElement>(null);
  const [typed, setTyped] = useState<TypedValues>(inputs as TypedValues);
  const [base, setBase] = useState(version);
  const [state, setState] = useState<SaveStateProps>({ state: "unchanged" });
  const [problems, setProblems] = useState<readonly FieldProblem[]>([]);
  const [theirs, setTheirs] = useState<TypedValues | null>(null);
  const model = useChosenModel(context, typed, readModel);
  const choices = choicesWith(catalog, model);
  const findings = useLiveFindings({ ...context, model }, stage, fields, typed);

  const send = async (from: number | null) => {
    if (!form.current) return;
    setState({ state: "saving" });
    const answer = await answered(
      save({ jobId, stage, expectedVersion: from, inputs: typedValues(fields, new FormData(form.current)) }),
    );
    if (answer.ok) {
      setBase(answer.value.version);
      setProblems([]);
      setTheirs(null);
      setState({
        state: "saved",
        at: new Date().toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" }),
      });
      return;
    }
    setProblems(answer.fields);
    setState({ state: "not saved", why: answer.message });
    if (answer.code === "CONFLICT" && answer.details.theirs) {
      setTheirs(answer.details.theirs as TypedValues);
      setBase(typeof answer.details.version === "number" ? answer.details.version : from);
    }
  };

  return (
    <div className="grid gap-6 xl:grid-cols-[minmax(0,3fr)_minmax(0,2fr)]">
      <Card>
        <form
          ref={form}
          noValidate
          onInput={(event) => {
            setTyped(typedValues(fields, new FormData(event.currentTarget)));
            setState({ state: "unchanged" });
          }}
          onSubmit={(event) => {
            event.preventDefault();
            void send(base);
          }}
        >
          <ErrorSummary problems={problems} />
          {theirs ? (
            <ConflictNotice
              fields={fields}
              mine={typed}
              theirs={theirs}
              choices={choices}
              keepMine={() => void send(base)}
            />
          ) : null}
          <div className="grid gap-6">
            {fieldGroups(fields).map((group) => (
              <FormSection key={group.title} title={group.title}>
                {group.fields.map(([key, field]) => (
                  <StageField
                    key={key}
                    name={key}
                    field={field}
                    value={((inputs as TypedValues)[key] ?? null) as FieldValue}
                    error={problemOf(problems, key)}
                    disabled={!mayEdit}
                    choices={field.kind === "reference" ? choices[field.to] : []}
                  />
                ))}
              </FormSection>
            ))}
          </div>
          {mayEdit ? (
            <FormActions>
              <Button type="submit" variant="primary" busy={state.state === "saving"} busyText="Saving…">
                Save
              </Button>
              <SaveState {...state} />
            </FormActions>
          ) : null}
        </form>
      </Card>
      <section aria-label="Findings" className="min-w-0">
        <h2 className="mb-3 text-lg font-semibold">Findings</h2>
        <FindingList findings={findings} ruleHref={(ruleId) => `/rules#${ruleId}`} />
      </section>
    </div>
  );
}

/** The model named in the form: the saved one, or one chosen just now and read from the catalog. */
function useChosenModel(
  context: JobContext,
  typed: TypedValues,
  readModel: Props["readModel"],
): EquipmentModel | null {
  const [read, setRead] = useState<EquipmentModel | null>(context.model);
  const wanted = "equipmentModelId" in typed ? typed.equipmentModelId : (context.model?.id ?? null);
  useEffect(() => {
    if (typeof wanted !== "string" || read?.id === wanted) return;
    let current = true;
    readModel({ modelId: wanted }).then(
      (answer) => {
        if (current && answer.ok) setRead(answer.value);
      },
      () => undefined,
    );
    return () => {
      current = false;
    };
  }, [wanted, read, readModel]);
  return read?.id === wanted ? read : null;
}

/** Typing stays quick: the findings follow as soon as there is a moment. */
function useLiveFindings(context: JobContext, stage: StageKey, fields: FieldDefs, typed: TypedValues) {
  const values = useDeferredValue(typed);
  return evaluateJob({ ...context, inputs: { ...context.inputs, [stage]: readableValues(fields, values) } })
    .findings[stage];
}

/** A lost connection is an answer like any other: what was typed stays, and the person is told. */
async function answered(save: Promise<SaveAnswer>): Promise<SaveAnswer> {
  try {
    return await save;
  } catch {
    return {
      ok: false,
      code: "UNAVAILABLE",
      message: "No connection to the server. Your entries are still here; save again when it is back.",
      fields: [],
      details: {},
    };
  }
}
