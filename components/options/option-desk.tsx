"use client";

import { useDeferredValue, useState } from "react";
import { ForecastPanel } from "@/components/forecast/forecast-panel";
import { forecastGroup } from "@/components/forecast/forecast-rows";
import { useOptionsForecast } from "@/components/forecast/use-options-forecast";
import { heard } from "@/components/forms/still-there";
import { readableValues, type TypedValues } from "@/components/stage/typed-values";
import { useChosenModel } from "@/components/stage/use-live-evaluation";
import { Button } from "@/components/ui/button";
import { EmptyState } from "@/components/ui/empty-state";
import { Notice } from "@/components/ui/notice";
import {
  LEAST_OPTIONS,
  MOST_OPTIONS,
  type Option,
  type OptionInputs,
  optionContext,
  optionFields,
  optionFigures,
} from "@/lib/domain/options";
import { ChoiceLine } from "./choice-line";
import type { OptionDeskView, OptionDoors, ShownOption } from "./option-data";
import { OptionEditor } from "./option-editor";
import { OptionTable } from "./option-table";
import { OptionTools } from "./option-tools";

type Props = { readonly view: OptionDeskView; readonly doors: OptionDoors };

/** Two to six options side by side; the one being changed is computed while it is typed. */
export function OptionDesk({ view, doors }: Props) {
  const { jobId, options, context, choice, mayEdit } = view;
  const [editedId, setEditedId] = useState<string | null>(null);
  const [typed, setTyped] = useState<TypedValues>({});
  const [refusal, setRefusal] = useState<string | null>(null);
  const edited = options.find((one) => one.id === editedId) ?? null;
  const wanted = edited === null ? {} : typed;
  const model = useChosenModel({ ...context, model: modelOf(view, edited) }, wanted, doors.readModel);
  const live = useDeferredValue(typed);

  const shown = options.map((option): ShownOption => {
    const isEdited = option.id === edited?.id;
    const inputs = isEdited
      ? ({ ...option.inputs, ...readableValues(optionFields, live) } as OptionInputs)
      : option.inputs;
    const itsModel = isEdited ? model : modelOf(view, option);
    const itsContext = optionContext(context, inputs, itsModel);
    return { option, inputs, model: itsModel, context: itsContext, figures: optionFigures(itsContext) };
  });

  const forecast = useOptionsForecast(view, shown);
  const edit = (option: Option | null) => {
    setTyped(option === null ? {} : (option.inputs as TypedValues));
    setEditedId(option?.id ?? null);
  };
  const knock = async (door: OptionDoors["add"], input: unknown) => {
    try {
      const answer = heard(await door(input));
      setRefusal(answer.ok ? null : answer.message);
    } catch {
      setRefusal("No connection to the server. Try again when it is back.");
    }
  };
  const add = (label: string, copyOf: string | null) => knock(doors.add, { jobId, label, copyOf });

  return (
    <div className="grid gap-6">
      {refusal === null ? null : <Notice kind="problem" title={refusal} />}
      {choice === null ? null : <ChoiceLine choice={choice} />}
      {options.length === 1 ? (
        <Notice kind="information" title="One option is no comparison">
          Duplicate it and change one thing. An option is chosen among at least {LEAST_OPTIONS}.
        </Notice>
      ) : null}
      {options.length === 0 ? (
        <EmptyState title="No options yet">
          Begin with what the equipment selection says now; then duplicate it and change one thing.
        </EmptyState>
      ) : (
        <OptionTable
          shown={shown}
          chosenId={choice?.optionId ?? null}
          editedId={editedId}
          more={[forecastGroup(jobId, context, forecast)]}
          tools={(one, index) =>
            mayEdit ? (
              <OptionTools
                view={view}
                shown={one}
                index={index}
                doors={doors}
                edit={() => edit(one.option)}
                knock={knock}
                duplicate={() => add(`${one.option.label}, changed`.slice(0, 80), one.option.id)}
              />
            ) : null
          }
        />
      )}
      {options.length === 0 ? null : (
        <ForecastPanel view={view} forecast={forecast} keep={doors.keepForecast} />
      )}
      {mayEdit && options.length < MOST_OPTIONS ? (
        <div>
          <Button onClick={() => add(`Option ${options.length + 1}`, null)}>
            Add an option from the equipment selection
          </Button>
        </div>
      ) : null}
      {edited === null ? null : (
        <OptionEditor
          key={edited.id}
          option={edited}
          model={model}
          catalog={view.catalog}
          onTyped={setTyped}
          save={(entry, expectedVersion) =>
            doors.save({ jobId, optionId: edited.id, expectedVersion, ...entry })
          }
          close={() => edit(null)}
        />
      )}
    </div>
  );
}

function modelOf({ models }: OptionDeskView, option: Option | null) {
  const id = option?.inputs.equipmentModelId ?? null;
  return id === null ? null : (models[id] ?? null);
}
