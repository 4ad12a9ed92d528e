import { useDeferredValue, useEffect, useState } from "react";
import type { EquipmentModel } from "@/lib/domain/catalog";
import { type Evaluation, evaluateJob, type JobContext } from "@/lib/domain/evaluate";
import type { FieldDefs } from "@/lib/domain/fields";
import type { StageKey } from "@/lib/domain/stages";
import { readableValues, type TypedValues } from "./typed-values";

export type ModelAnswer = { readonly ok: true; readonly value: EquipmentModel } | { readonly ok: false };

/** The model named in the form: the saved one, or one chosen just now and read from the catalog. */
export function useChosenModel(
  context: JobContext,
  typed: TypedValues,
  readModel: (input: unknown) => Promise<ModelAnswer>,
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

/** The job as it would be with what is typed now. Typing stays quick: it follows as soon as there is a moment. */
export function useLiveEvaluation(
  context: JobContext,
  stage: StageKey,
  fields: FieldDefs,
  typed: TypedValues,
): { readonly context: JobContext; readonly evaluation: Evaluation } {
  const values = useDeferredValue(typed);
  const live = { ...context, inputs: { ...context.inputs, [stage]: readableValues(fields, values) } };
  return { context: live, evaluation: evaluateJob(live) };
}
