"use server";

import { revalidatePath } from "next/cache";
import { z } from "zod";
import { brandSchema } from "@/lib/schemas/brand";
import { action } from "@/lib/server/action";
import { removeLogo, saveBrand } from "@/lib/services/brand";

export const save = action({
  name: "save brand",
  permission: "brand.edit",
  schema: brandSchema,
  run: async (scope, input) => {
    await saveBrand(scope, input);
    revalidatePath("/", "layout");
  },
});

export const takeLogoOff = action({
  name: "remove logo",
  permission: "brand.edit",
  schema: z.strictObject({}),
  run: async (scope) => {
    await removeLogo(scope);
    revalidatePath("/", "layout");
  },
});
