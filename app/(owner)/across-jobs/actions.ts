"use server";

import { revalidatePath } from "next/cache";
import { removeViewSchema, saveViewSchema } from "@/lib/schemas/saved-view";
import { action } from "@/lib/server/action";
import { removeView, saveView } from "@/lib/services/saved-views";

export const keepQuestion = action({
  name: "keep question",
  permission: "across-jobs.read",
  schema: saveViewSchema,
  run: async (scope, input) => {
    await saveView(scope, "across-jobs", input);
    revalidatePath("/across-jobs");
  },
});

export const removeQuestion = action({
  name: "remove question",
  permission: "across-jobs.read",
  schema: removeViewSchema,
  run: async (scope, input) => {
    await removeView(scope, "across-jobs", input);
    revalidatePath("/across-jobs");
  },
});
