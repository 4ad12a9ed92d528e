"use server";

import { revalidatePath } from "next/cache";
import { workIdSchema } from "@/lib/schemas/work";
import { action } from "@/lib/server/action";
import { retryWork } from "@/lib/services/work";

export const tryAgain = action({
  name: "try work again",
  permission: "work.manage",
  schema: workIdSchema,
  run: async (scope, input) => {
    await retryWork(scope, input);
    revalidatePath("/company/work");
  },
});
