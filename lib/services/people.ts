import { hashSecret, makeSecret } from "@/lib/auth/one-time-secret";
import { hashPassword, passwordProblem } from "@/lib/auth/password";
import { company } from "@/lib/db/company";
import { members } from "@/lib/db/members";
import { unscopedAcceptInvitation, unscopedInvitation, unscopedSetPassword } from "@/lib/db/unscoped/people";
import { asId } from "@/lib/domain/ids";
import { ROLE_NAMES, type Role } from "@/lib/domain/roles";
import type { TenantScope } from "@/lib/domain/scope";
import { env } from "@/lib/env";
import { invalidInput, notFound } from "@/lib/errors";
import { sendMail } from "@/lib/mail/send-mail";
import type { InviteMemberInput } from "@/lib/schemas/people";
import { provePassword } from "./prove-password";

const INVITATION_DAYS = 7;

/** Writes the invitation and sends its one-time link. */
export async function inviteMember(
  scope: TenantScope,
  input: InviteMemberInput,
  now = new Date(),
): Promise<void> {
  const { secret, hash } = makeSecret();
  const expiresAt = new Date(now.getTime() + INVITATION_DAYS * 86_400_000);
  await members(scope).invite({ ...input, tokenHash: hash, expiresAt });
  const { name } = await company(scope).get();
  await sendMail({
    to: input.email,
    subject: `${name} invites you to Dewledger`,
    text: [
      `Hello ${input.name},`,
      "",
      `${name} would like you to join as ${ROLE_NAMES[input.role].toLowerCase()}. Open this link within ${INVITATION_DAYS} days:`,
      "",
      `${env().NEXTAUTH_URL}/join/${secret}`,
      "",
      "The link works once. If you did not expect it, ignore this message.",
    ].join("\n"),
  });
}

export async function revokeInvitation(scope: TenantScope, invitationId: string): Promise<void> {
  await members(scope).revokeInvitation(invitationId);
}

export async function changeRole(
  scope: TenantScope,
  input: { readonly userId: string; readonly role: Role },
): Promise<void> {
  await members(scope).changeRole(asId<"user">(input.userId), input.role);
}

/** Ends a membership. The person's sessions in this company end at their next step. */
export async function removeMember(scope: TenantScope, input: { readonly userId: string }): Promise<void> {
  await members(scope).remove(asId<"user">(input.userId));
}

export type InvitationView = {
  readonly companyName: string;
  readonly email: string;
  readonly role: Role;
  readonly personIsKnown: boolean;
};

/** What an invitation link opens. A used, withdrawn, expired or guessed one is the same "nothing here". */
export async function openInvitation(secret: string, now = new Date()): Promise<InvitationView> {
  const found = await unscopedInvitation(hashSecret(secret), now);
  if (!found) throw notFound();
  return found;
}

/** Joins the company. A new person sets a password; a known one proves the password they have. */
export async function acceptInvitation(
  input: { readonly secret: string; readonly password: string },
  now = new Date(),
): Promise<{ readonly email: string }> {
  const invitation = await openInvitation(input.secret, now);
  if (invitation.personIsKnown) {
    await provePassword({ email: invitation.email }, input.password, {
      field: "password",
      message: "This is not the password you already use here. Enter that one.",
    });
    await unscopedAcceptInvitation(hashSecret(input.secret), null, now);
  } else {
    const problem = passwordProblem("password", input.password);
    if (problem) throw invalidInput([problem]);
    await unscopedAcceptInvitation(hashSecret(input.secret), await hashPassword(input.password), now);
  }
  return { email: invitation.email };
}

/** Changes the password and ends every session of the person. */
export async function changePassword(
  scope: TenantScope,
  input: { readonly current: string; readonly next: string },
): Promise<void> {
  await provePassword({ userId: scope.userId }, input.current, {
    field: "current",
    message: "This is not your current password. Try again.",
  });
  const problem = passwordProblem("next", input.next);
  if (problem) throw invalidInput([problem]);
  await unscopedSetPassword(scope.userId, await hashPassword(input.next));
}

/** Everyone who can be assigned to a job, for a list to choose from. */
export async function listTechs(
  scope: TenantScope,
): Promise<readonly { readonly value: string; readonly label: string }[]> {
  const all = await members(scope).list();
  return all.map((one) => ({
    value: one.userId,
    label: `${one.name}${one.role === "tech" ? "" : ` (${ROLE_NAMES[one.role].toLowerCase()})`}`,
  }));
}

/** The name under which this person is a member of the company. */
export async function memberName(scope: TenantScope): Promise<string> {
  return (await members(scope).list()).find((one) => one.userId === scope.userId)?.name ?? "";
}
