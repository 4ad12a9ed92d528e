"use server";

import { revalidatePath } from "next/cache";
import { makeMonthSchema } from "@/lib/schemas/month-digest";
import { action } from "@/lib/server/action";
import { monthDigest } from "@/lib/services/month-digest";

export const makeMonth = action({
  name: "make month",
  permission: "across-jobs.read",
  schema: makeMonthSchema,
  run: async (scope, { month }) => {
    await monthDigest(scope, month);
    revalidatePath("/across-jobs/months");
  },
});
