import { type MadeDelivery, webhookDeliveries } from "@/lib/db/webhook-deliveries";
import { withTenant } from "@/lib/db/with-tenant";
import { workItems } from "@/lib/db/work-items";
import type { TenantScope } from "@/lib/domain/scope";
import type { WebhookEvent } from "@/lib/domain/webhooks";
import { EVENT_DATA, type EventData } from "@/lib/schemas/api/events";

/**
 * Has an event told to the company's programs, in the transaction that makes it happen: both are kept or neither.
 *
 * @param occasion - What happened, so that it is told once however often this is called.
 */
export function tellWebhooks<E extends WebhookEvent>(
  scope: TenantScope,
  event: E,
  occasion: string,
  data: EventData<E>,
): Promise<void> {
  return withTenant(scope, async () => {
    const payload = EVENT_DATA[event].parse(data);
    const made = await webhookDeliveries(scope).add(event, `${event} ${occasion}`, payload);
    for (const delivery of made) await queueDelivery(scope, event, delivery);
  });
}

/** Puts one delivery on the queue. */
export async function queueDelivery(
  scope: TenantScope,
  event: string,
  { id, url }: MadeDelivery,
): Promise<void> {
  await workItems(scope).add({
    task: "deliver webhook",
    title: `Tell ${new URL(url).hostname}: ${event}`,
    input: { deliveryId: id },
    key: id,
  });
}
