"use server";

import { revalidatePath } from "next/cache";
import { mailSwitchesSchema } from "@/lib/schemas/mail-switches";
import { changePasswordSchema } from "@/lib/schemas/people";
import { action } from "@/lib/server/action";
import { switchMail } from "@/lib/services/company-mail/switches";
import { changePassword } from "@/lib/services/people";

export const changeOwnPassword = action({
  name: "change password",
  permission: "job.read",
  schema: changePasswordSchema,
  run: changePassword,
});

export const setOwnMail = action({
  name: "switch own mail",
  permission: "job.read",
  schema: mailSwitchesSchema,
  run: async (scope, input) => {
    await switchMail(scope, input);
    revalidatePath("/account");
  },
});
