import { z } from "zod";
import { WEBHOOK_EVENT_KEYS } from "@/lib/domain/webhooks";

const events = z
  .array(z.enum(WEBHOOK_EVENT_KEYS, { error: "Events: choose from the list." }))
  .min(1, { error: "Events: choose at least one." })
  .transform((given) => WEBHOOK_EVENT_KEYS.filter((one) => given.includes(one)));

export const addWebhookSchema = z.strictObject({
  url: z
    .string({ error: "Address: give one that begins with https://." })
    .trim()
    .max(500, { error: "Address is longer than 500 characters." }),
  events,
});
export type AddWebhookInput = z.output<typeof addWebhookSchema>;

export const webhookIdSchema = z.strictObject({
  webhookId: z.uuid({ error: "Choose a webhook from the list." }),
});
export const switchWebhookSchema = webhookIdSchema.extend({ on: z.boolean() });
export const resendSchema = z.strictObject({
  deliveryId: z.uuid({ error: "Choose a delivery from the list." }),
});
