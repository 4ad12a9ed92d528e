import type { SendMailOptions } from "nodemailer";
import { env } from "@/lib/env";
import { invalidInput } from "@/lib/errors";
import type { MailMessage, SentMail } from "./message";
import { writeToOutbox } from "./outbox";
import { sendBySmtp } from "./smtp";

/** One plain address: no lists, no display names, no line breaks that could smuggle in a header. */
const ADDRESS = /^[^\s<>(),;:"@]+@[^\s<>(),;:"@]+$/;

/**
 * Sends one mail: by SMTP when the settings name a server, otherwise into the file outbox.
 *
 * @throws AppError `INVALID_INPUT` naming the field that is wrong; `UNAVAILABLE` when the mail server refuses
 * or cannot be reached, so that the caller can try again later.
 */
export async function sendMail(message: MailMessage): Promise<SentMail> {
  requireSendable(message);
  const { SMTP_URL, DATA_DIR, MAIL_FROM } = env();
  const options = toOptions(message, MAIL_FROM);
  return SMTP_URL === undefined ? writeToOutbox(DATA_DIR, options) : sendBySmtp(SMTP_URL, options);
}

function toOptions(message: MailMessage, from: string): SendMailOptions {
  return {
    from,
    to: message.to,
    replyTo: message.replyTo,
    ...(message.id === undefined ? {} : { messageId: `<${message.id}@dewledger>` }),
    subject: message.subject,
    text: message.text,
    attachments: (message.attachments ?? []).map(({ filename, contentType, content }) => ({
      filename,
      contentType,
      content: Buffer.from(content),
    })),
    // A mail's parts are given as bytes; it never reads a path or fetches an address.
    disableFileAccess: true,
    disableUrlAccess: true,
  };
}

function requireSendable({ to, replyTo, subject }: MailMessage): void {
  const problems = [
    !ADDRESS.test(to) && { field: "to", message: "Enter one e-mail address, such as name@example.com." },
    replyTo !== undefined &&
      !ADDRESS.test(replyTo) && {
        field: "replyTo",
        message: "Enter one reply address, such as office@example.com.",
      },
    (subject.trim() === "" || /[\r\n]/.test(subject)) && {
      field: "subject",
      message: "Enter a subject of one line.",
    },
  ].filter((problem) => problem !== false);
  if (problems.length > 0) throw invalidInput(problems);
}
