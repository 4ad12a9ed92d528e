"use server";

import { revalidatePath } from "next/cache";
import { changeRoleSchema, invitationIdSchema, inviteMemberSchema, memberSchema } from "@/lib/schemas/people";
import { action } from "@/lib/server/action";
import { changeRole, inviteMember, removeMember, revokeInvitation } from "@/lib/services/people";

const permission = "members.manage" as const;

function refreshed<Args extends readonly unknown[]>(run: (...args: Args) => Promise<void>) {
  return async (...args: Args): Promise<void> => {
    await run(...args);
    revalidatePath("/company/members");
  };
}

export const invite = action({
  name: "invite member",
  permission,
  schema: inviteMemberSchema,
  run: refreshed((scope, input) => inviteMember(scope, input)),
});
export const setRole = action({
  name: "change role",
  permission,
  schema: changeRoleSchema,
  run: refreshed(changeRole),
});
export const remove = action({
  name: "remove member",
  permission,
  schema: memberSchema,
  run: refreshed(removeMember),
});
export const withdraw = action({
  name: "withdraw invitation",
  permission,
  schema: invitationIdSchema,
  run: refreshed((scope, input) => revokeInvitation(scope, input.invitationId)),
});
