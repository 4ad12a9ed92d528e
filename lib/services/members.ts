import { company } from "@/lib/db/company";
import { type Member, members, type OpenInvitation } from "@/lib/db/members";
import type { TenantScope } from "@/lib/domain/scope";

export type MembersView = {
  readonly members: readonly (Member & { readonly isYou: boolean })[];
  readonly invitations: readonly OpenInvitation[];
  readonly timeZone: string;
};

/** Who works here, and who has been asked to. */
export async function membersView(scope: TenantScope, now = new Date()): Promise<MembersView> {
  const [list, invitations, { timeZone }] = await Promise.all([
    members(scope).list(),
    members(scope).openInvitations(now),
    company(scope).get(),
  ]);
  return {
    members: list.map((one) => ({ ...one, isYou: one.userId === scope.userId })),
    invitations,
    timeZone,
  };
}
