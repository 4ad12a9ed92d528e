"use server";

import { changePasswordSchema } from "@/lib/schemas/people";
import { action } from "@/lib/server/action";
import { changePassword } from "@/lib/services/people";

export const changeOwnPassword = action({
  name: "change password",
  permission: "job.read",
  schema: changePasswordSchema,
  run: changePassword,
});
