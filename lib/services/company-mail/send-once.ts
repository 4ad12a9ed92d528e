import { createHash } from "node:crypto";
import { mailNotices } from "@/lib/db/mail-notices";
import type { MailKind } from "@/lib/domain/mail-kinds";
import type { TenantScope } from "@/lib/domain/scope";
import { AppError } from "@/lib/errors";
import type { MailMessage } from "@/lib/mail/message";
import { sendMail } from "@/lib/mail/send-mail";

type Said = Omit<MailMessage, "to">;

/**
 * Sends one mail of the company's own to everybody it is for, to each at most once, however often it is asked for. When the
 * server stops between sending and noting it, the mail is not sent again: a doubled mail is trusted less than a list on screen.
 *
 * @param key - What the mail says, such as one complaint's coming in.
 * @returns What became of it, in words.
 * @throws The last refusal, after everybody has been tried; another try sends to those who were refused only.
 */
export async function sendOnce(
  scope: TenantScope,
  mail: { readonly kind: MailKind; readonly key: string; readonly message: Said },
): Promise<string> {
  const notices = mailNotices(scope);
  const recipients = await notices.recipients(mail.kind);
  if (recipients.length === 0) return "Nobody wants this mail.";
  let [sent, refused] = [0, null as unknown];
  for (const { userId, name, email } of recipients) {
    if (!(await notices.claim(userId, mail.key))) continue;
    try {
      await sendMail({
        ...mail.message,
        subject: oneLine(mail.message.subject),
        to: email,
        id: createHash("sha256").update(`${scope.tenantId} ${userId} ${mail.key}`).digest("hex"),
        text: `Hello ${name},\n\n${mail.message.text}\n\nYou can switch this mail off under your name, at “Mail to you”.`,
      });
    } catch (error) {
      await notices.giveBack(userId, mail.key);
      refused =
        error instanceof AppError
          ? error
          : new AppError("UNAVAILABLE", "The mail could not be written.", { cause: error });
      continue;
    }
    await notices.sent(userId, mail.key);
    sent++;
  }
  if (refused !== null) throw refused;
  return sent === 0 ? "Had been mailed before." : `Mailed to ${sent === 1 ? "1 person" : `${sent} people`}.`;
}

/** A subject is one line, whatever a name holds. */
const oneLine = (words: string) => words.replaceAll(/\s+/g, " ").slice(0, 200);
