/** One mail, ready to go. The sender is the installation's own address, from its settings. */
export type MailMessage = {
  readonly to: string;
  readonly subject: string;
  readonly text: string;
  /** Mails of one id are one mail: servers and mail programs that see it twice show it once. */
  readonly id?: string;
  /** Where an answer goes: usually the contractor's own address. */
  readonly replyTo?: string;
  readonly attachments?: readonly MailAttachment[];
};

export type MailAttachment = {
  readonly filename: string;
  readonly contentType: string;
  readonly content: Uint8Array;
};

/** What became of a mail: handed to a mail server, or kept as a file in the outbox. */
export type SentMail =
  | { readonly via: "smtp"; readonly messageId: string }
  | { readonly via: "outbox"; readonly messageId: string; readonly file: string };
