import { z } from "zod";
import { MAIL_KIND_KEYS } from "@/lib/domain/mail-kinds";

/** The kinds of mail a person wants; every other kind of their role is off. */
export const mailSwitchesSchema = z.strictObject({
  on: z.array(z.enum(MAIL_KIND_KEYS, { error: "Mail to you: choose from the list." })).max(10),
});
export type MailSwitchesInput = z.output<typeof mailSwitchesSchema>;
