"use client";

import { useRef, useState } from "react";
import { FindingList } from "@/components/findings/finding-list";
import { ErrorSummary, problemOf } from "@/components/forms/error-summary";
import { FormActions, FormSection } from "@/components/forms/form-section";
import { Button } from "@/components/ui/button";
import { Card } from "@/components/ui/card";
import { SaveState, type SaveStateProps } from "@/components/ui/save-state";
import type { JobContext } from "@/lib/domain/evaluate";
import { type FieldDefs, fieldGroups } from "@/lib/domain/fields";
import type { FieldProblem } from "@/lib/domain/problems";
import type { StageInputs, StageKey } from "@/lib/domain/stages";
import { type CatalogChoices, choicesWith } from "./choices";
import { ConflictNotice } from "./conflict-notice";
import { type FieldValue, StageField } from "./stage-field";
import { StagePictures } from "./stage-pictures";
import { type TypedValues, typedValues } from "./typed-values";
import { type ModelAnswer, useChosenModel, useLiveEvaluation } from "./use-live-evaluation";

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
  const live = useLiveEvaluation({ ...context, model }, stage, fields, typed);

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
    <div className="grid items-start gap-6 xl:grid-cols-[minmax(0,3fr)_minmax(0,2fr)]">
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
      <div className="grid min-w-0 content-start gap-6">
        <section aria-label="Findings" className="min-w-0">
          <h2 className="mb-3 text-lg font-semibold">Findings</h2>
          <FindingList findings={live.evaluation.findings[stage]} ruleHref={(ruleId) => `/rules#${ruleId}`} />
        </section>
        <StagePictures stage={stage} {...live} />
      </div>
    </div>
  );
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
