"use server";

import { revalidatePath } from "next/cache";
import { apiTokenIdSchema, makeApiTokenSchema } from "@/lib/schemas/api-token";
import { action } from "@/lib/server/action";
import { addApiToken, revokeApiToken } from "@/lib/services/api-tokens";

const permission = "tokens.manage" as const;

export const make = action({
  name: "make API token",
  permission,
  schema: makeApiTokenSchema,
  run: async (scope, input) => {
    const made = await addApiToken(scope, input);
    revalidatePath("/company/tokens");
    return made;
  },
});

export const revoke = action({
  name: "revoke API token",
  permission,
  schema: apiTokenIdSchema,
  run: async (scope, input) => {
    await revokeApiToken(scope, input);
    revalidatePath("/company/tokens");
  },
});
