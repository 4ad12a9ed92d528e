import { z } from "zod";
import { CALLBACK_KIND_KEYS } from "@/lib/domain/callbacks";
import { PACKET_KINDS } from "@/lib/domain/packets";
import type { WebhookEvent } from "@/lib/domain/webhooks";
import { id, verdict } from "./parts";

const ofJob = { jobId: id("Id of the job"), jobNumber: z.int() };

/** What each event tells. The rest is read through the API, so that no more than needed travels. */
export const EVENT_DATA = {
  "startup.signed": z.object({ ...ofJob, verdict: verdict.nullable() }),
  "callback.opened": z.object({
    ...ofJob,
    callbackId: id("Id of the callback"),
    kind: z.enum(CALLBACK_KIND_KEYS),
    reportedOn: z.iso.date(),
    again: z.boolean().describe("True when a log opened it again"),
  }),
  "review.due": z.object({ ...ofJob, dueOn: z.iso.date() }),
  "review.fell_short": z.object({ ...ofJob, verdict }),
  "packet.sent": z.object({
    ...ofJob,
    packetId: id("Id of the packet"),
    kind: z.enum(PACKET_KINDS),
    sha256: z.string().describe("SHA-256 of its PDF"),
  }),
} as const satisfies Readonly<Record<WebhookEvent, z.ZodObject>>;

export type EventData<E extends WebhookEvent> = z.input<(typeof EVENT_DATA)[E]>;

/** The body of every delivery. */
export function eventBody(event: WebhookEvent) {
  return z.object({
    id: z.uuid().describe("The same when it is sent again: do nothing twice"),
    event: z.literal(event),
    createdAt: z.iso.datetime(),
    data: EVENT_DATA[event],
  });
}
