import type { z } from "zod";
import { schemaOfFields } from "../field-schema";
import { STAGE_FIELDS, type StageInputs } from "./index";
import type { StageKey } from "./keys";
import { refusePhysics } from "./physics";

/** Made once: making a schema takes longer than reading with it. */
const schemas = new Map<StageKey, unknown>();

/** What may be saved as a draft: fields may be missing; what is there must be possible. */
export function stageSchema<S extends StageKey>(stage: S): z.ZodType<StageInputs[S]> {
  const schema = schemas.get(stage) ?? makeSchema(stage);
  schemas.set(stage, schema);
  return schema as z.ZodType<StageInputs[S]>;
}

function makeSchema(stage: StageKey) {
  return schemaOfFields(STAGE_FIELDS[stage]).superRefine((inputs, context) => {
    for (const problem of refusePhysics(stage, inputs)) {
      context.addIssue({ code: "custom", path: [problem.field], message: problem.message });
    }
  });
}
