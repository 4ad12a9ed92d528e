// Longer than usual because the form, its saving, its steps back and its findings share one state.
"use client";

import { useRef, useState } from "react";
import { FindingList } from "@/components/findings/finding-list";
import { ErrorSummary } from "@/components/forms/error-summary";
import { FormActions } from "@/components/forms/form-section";
import { Button } from "@/components/ui/button";
import { Card } from "@/components/ui/card";
import { SaveState } from "@/components/ui/save-state";
import { withDeviation } from "@/lib/domain/deviations";
import type { JobContext } from "@/lib/domain/evaluate";
import { type FieldDefs, fieldGroups } from "@/lib/domain/fields";
import type { StageInputs, StageKey } from "@/lib/domain/stages";
import { type CatalogChoices, choicesWith } from "./choices";
import { ConflictNotice } from "./conflict-notice";
import { Departures } from "./departures";
import { DesignValues } from "./design-values";
import { fillForm } from "./fill-form";
import type { SaveAnswer } from "./save-answer";
import { StageFields } from "./stage-fields";
import { StagePictures } from "./stage-pictures";
import { type TypedValues, typedValues } from "./typed-values";
import { useAutosave } from "./use-autosave";
import { stepOfKey, useHistory } from "./use-history";
import { type ModelAnswer, useChosenModel, useLiveEvaluation } from "./use-live-evaluation";

/** Entered beside the findings they explain, not in the form. */
const DEPARTURES = "Departures";

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
  const now = useRef(typed);
  const history = useHistory();
  const [steps, setSteps] = useState(0);
  const model = useChosenModel(context, typed, readModel);
  const choices = choicesWith(catalog, model);
  const live = useLiveEvaluation({ ...context, model }, stage, fields, typed);
  const take = (values: TypedValues) => {
    now.current = values;
    setTyped(values);
  };
  const write = (values: TypedValues) => {
    // First what the form means, then its fields: a list may offer the value only after the model is known.
    take({ ...now.current, ...values });
    if (form.current) fillForm(form.current, values);
  };
  const { state, problems, theirs, touch, send, keepMine } = useAutosave({
    jobId,
    stage,
    fields,
    inputs: inputs as TypedValues,
    version,
    mayEdit,
    save,
    read: () => now.current,
    write,
  });
  const isWriting = useRef(false);
  const enter = (values: TypedValues, field: string) => {
    history.note(now.current, field);
    put(values);
  };
  const put = (values: TypedValues) => {
    isWriting.current = true;
    write(values);
    isWriting.current = false;
    touch();
  };
  const step = (direction: "undo" | "redo") => {
    const to = history.step(direction, now.current);
    if (to === null) return;
    put(to);
    setSteps(steps + 1);
  };

  return (
    // Wide: pictures under the form, findings beside both. The second row takes what long findings need.
    <div className="grid items-start gap-6 xl:grid-cols-[minmax(0,3fr)_minmax(0,2fr)] xl:grid-rows-[auto_1fr]">
      <Card>
        <form
          ref={form}
          noValidate
          onInput={(event) => {
            if (isWriting.current) return;
            const { name } = event.target as HTMLInputElement;
            history.note(now.current, name);
            const values = typedValues(fields, new FormData(event.currentTarget));
            const { deviations = null } = now.current;
            take({ ...values, ...("deviations" in fields ? { deviations } : {}) });
            touch();
          }}
          onKeyDown={(event) => {
            const direction = stepOfKey(event);
            if (direction === null || !mayEdit) return;
            event.preventDefault();
            step(direction);
          }}
          onSubmit={(event) => {
            event.preventDefault();
            void send();
          }}
        >
          <ErrorSummary problems={problems} />
          {theirs ? (
            <ConflictNotice
              fields={fields}
              mine={typed}
              theirs={theirs}
              choices={choices}
              keepMine={keepMine}
            />
          ) : null}
          {mayEdit && stage === "load_summary" ? (
            <DesignValues jobId={jobId} weather={context.weather} typed={typed} enter={enter} />
          ) : null}
          <div className="grid gap-6">
            <StageFields
              groups={fieldGroups(fields).filter((group) => group.title !== DEPARTURES)}
              inputs={inputs as TypedValues}
              problems={problems}
              disabled={!mayEdit}
              choices={choices}
            />
          </div>
          {mayEdit ? (
            <FormActions>
              <Button type="submit" variant="primary" busy={state.state === "saving"} busyText="Saving…">
                Save
              </Button>
              <Button variant="quiet" disabled={!history.canUndo} onClick={() => step("undo")}>
                Undo
              </Button>
              <Button variant="quiet" disabled={!history.canRedo} onClick={() => step("redo")}>
                Redo
              </Button>
              <SaveState {...state} />
            </FormActions>
          ) : null}
        </form>
      </Card>
      <section aria-label="Findings" className="min-w-0 xl:col-start-2 xl:row-span-2 xl:row-start-1">
        <h2 className="mb-3 text-lg font-semibold">Findings</h2>
        <FindingList findings={live.evaluation.findings[stage]} ruleHref={(ruleId) => `/rules#${ruleId}`} />
        {"deviations" in fields ? (
          <Departures
            key={steps}
            findings={live.evaluation.findings[stage]}
            text={(typed.deviations ?? null) as string | null}
            disabled={!mayEdit}
            say={(ruleId, reason) =>
              enter(
                {
                  deviations: withDeviation(
                    (now.current.deviations ?? null) as string | null,
                    ruleId,
                    reason,
                  ),
                },
                "deviations",
              )
            }
          />
        ) : null}
      </section>
      <div className="grid min-w-0 gap-6 xl:col-start-1">
        <StagePictures stage={stage} {...live} />
      </div>
    </div>
  );
}
