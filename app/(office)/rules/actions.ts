"use server";

import { revalidatePath } from "next/cache";
import { changeLimitSchema, previewLimitSchema } from "@/lib/schemas/rules";
import { action } from "@/lib/server/action";
import { previewLimit as previewOfLimit } from "@/lib/services/limit-preview";
import { changeLimit } from "@/lib/services/rules";

export const setLimit = action({
  name: "change limit",
  permission: "rules.edit",
  schema: changeLimitSchema,
  run: async (scope, input) => {
    await changeLimit(scope, input);
    // Every job's verdicts may read it.
    revalidatePath("/", "layout");
  },
});

export const previewLimit = action({
  name: "preview limit",
  permission: "rules.edit",
  schema: previewLimitSchema,
  run: previewOfLimit,
});
