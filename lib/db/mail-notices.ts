import { MAIL_KINDS, type MailKind, mailFor } from "@/lib/domain/mail-kinds";
import type { TenantScope } from "@/lib/domain/scope";
import { appendActivity } from "./activity";
import { withTenant } from "./with-tenant";

export type Recipient = { readonly userId: string; readonly name: string; readonly email: string };

/** Who is sent which of the company's own mails, and that each goes once. */
export function mailNotices(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  const row = (memberId: string, key: string) => ({ ...own, memberId, key });
  return {
    /** Members whose role gets this kind and who have not switched it off. */
    recipients: (kind: MailKind): Promise<readonly Recipient[]> =>
      withTenant(scope, (tx) =>
        tx.membership.findMany({
          where: {
            ...own,
            removedAt: null,
            role: { in: [...MAIL_KINDS[kind].roles] },
            NOT: { mailOff: { has: kind } },
          },
          orderBy: { userId: "asc" },
          select: { userId: true, name: true, email: true },
        }),
      ),

    /** True for the first who asks: whoever gets it sends the mail. */
    claim: (memberId: string, key: string): Promise<boolean> =>
      withTenant(scope, async (tx) => {
        const made = await tx.mailNotice.createMany({ data: [row(memberId, key)], skipDuplicates: true });
        return made.count === 1;
      }),

    sent: (memberId: string, key: string): Promise<void> =>
      withTenant(scope, async (tx) => {
        await tx.mailNotice.updateMany({ where: row(memberId, key), data: { sentAt: new Date() } });
      }),

    /** Gives back a claim whose mail was refused, so that another try may send it. */
    giveBack: (memberId: string, key: string): Promise<void> =>
      withTenant(scope, async (tx) => {
        await tx.mailNotice.deleteMany({ where: { ...row(memberId, key), sentAt: null } });
      }),

    /** The kinds this person could get, and whether each is on. */
    switches: (): Promise<readonly { readonly kind: MailKind; readonly on: boolean }[]> =>
      withTenant(scope, async (tx) => {
        const found = await tx.membership.findFirst({
          where: { ...own, userId: scope.userId, removedAt: null },
          select: { mailOff: true },
        });
        return mailFor(scope.role).map((kind) => ({ kind, on: !found?.mailOff.includes(kind) }));
      }),

    setOff: (kinds: readonly MailKind[]): Promise<void> =>
      withTenant(scope, async (tx) => {
        await tx.membership.updateMany({
          where: { ...own, userId: scope.userId, removedAt: null },
          data: { mailOff: [...kinds], updatedAt: new Date() },
        });
        await appendActivity(tx, scope, {
          action: "own mail changed",
          entity: "membership",
          entityId: scope.userId,
          after: { off: kinds.map((kind) => MAIL_KINDS[kind].label).join("; ") || "nothing" },
        });
      }),
  };
}
