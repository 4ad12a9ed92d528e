import { z } from "zod";
import { LANGUAGES_OF, PACKET_KINDS, PACKET_LANGUAGES, PACKET_PAPERS } from "@/lib/domain/packets";

/** Which packet of a job to make. */
export const makePacketSchema = z
  .strictObject({
    jobId: z.uuid(),
    kind: z.enum(PACKET_KINDS, { error: "Packet: choose one." }),
    language: z.enum(PACKET_LANGUAGES, { error: "Language: choose English or Spanish." }),
    paper: z.enum(PACKET_PAPERS, { error: "Paper: choose Letter or A4." }),
  })
  .refine(({ kind, language }) => LANGUAGES_OF[kind].includes(language), {
    path: ["language"],
    error: "Language: this packet is written in English only. Choose English.",
  });
export type MakePacketInput = z.output<typeof makePacketSchema>;

const DAYS = [7, 30, 90] as const;
export const LINK_DAYS = DAYS;

/** To whom a packet goes. */
export const sendPacketSchema = z.strictObject({
  jobId: z.uuid(),
  packetId: z.uuid(),
  to: z.email({ error: "To: enter one e-mail address, such as name@example.com." }).max(254),
  message: z
    .string({ error: "Message: enter text." })
    .trim()
    .max(2_000, { error: "Message is longer than 2,000 characters. Shorten it." }),
  days: z.coerce.number().pipe(
    z.union(
      DAYS.map((days) => z.literal(days)),
      { error: "The link opens for 7, 30 or 90 days. Choose one." },
    ),
  ),
  attach: z.boolean(),
});
export type SendPacketInput = z.output<typeof sendPacketSchema>;

/** Which packet of a job is meant. */
export const packetIdSchema = z.strictObject({ jobId: z.uuid(), packetId: z.uuid() });

export const revokeShareSchema = z.strictObject({ jobId: z.uuid(), shareId: z.uuid() });
export type RevokeShareInput = z.output<typeof revokeShareSchema>;
