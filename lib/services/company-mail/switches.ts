import { mailNotices } from "@/lib/db/mail-notices";
import { mailFor } from "@/lib/domain/mail-kinds";
import type { TenantScope } from "@/lib/domain/scope";
import type { MailSwitchesInput } from "@/lib/schemas/mail-switches";

/** Keeps which of the company's own mails a person wants. */
export function switchMail(scope: TenantScope, { on }: MailSwitchesInput): Promise<void> {
  return mailNotices(scope).setOff(mailFor(scope.role).filter((kind) => !on.includes(kind)));
}

/** Which mails this person could get, and whether each is on. */
export function mailSwitches(scope: TenantScope) {
  return mailNotices(scope).switches();
}
