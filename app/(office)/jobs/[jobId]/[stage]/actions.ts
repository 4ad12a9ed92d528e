"use server";

import { revalidatePath } from "next/cache";
import { holdForecastSchema } from "@/lib/schemas/hold-forecast";
import { action } from "@/lib/server/action";
import { askToHold } from "@/lib/services/hold-forecast";

export const holdForecast = action({
  name: "hold forecast against log",
  permission: "review.edit",
  schema: holdForecastSchema,
  run: async (scope, input) => {
    await askToHold(scope, input);
    revalidatePath(`/jobs/${input.jobId}`, "layout");
  },
});
