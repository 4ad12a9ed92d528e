"use server";

import { revalidatePath } from "next/cache";
import { logCallbackSchema, workCallbackSchema } from "@/lib/schemas/callback";
import { action } from "@/lib/server/action";
import { logCallback, workOnCallback } from "@/lib/services/callbacks";

export const takeDown = action({
  name: "log callback",
  permission: "callback.edit",
  schema: logCallbackSchema,
  run: async (scope, input) => {
    await logCallback(scope, input);
    revalidatePath(`/jobs/${input.jobId}/callbacks`);
  },
});

export const workOn = action({
  name: "work on callback",
  permission: "callback.edit",
  schema: workCallbackSchema,
  run: async (scope, input) => {
    const { jobId } = await workOnCallback(scope, input);
    revalidatePath(`/jobs/${jobId}/callbacks`);
  },
});
