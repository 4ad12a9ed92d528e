import { randomUUID } from "node:crypto";
import { makeSecret } from "@/lib/auth/one-time-secret";
import { sealSecret } from "@/lib/auth/sealed-secret";
import { company } from "@/lib/db/company";
import { webhookDeliveries } from "@/lib/db/webhook-deliveries";
import { webhooks } from "@/lib/db/webhooks";
import { withTenant } from "@/lib/db/with-tenant";
import { asId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { MOST_WEBHOOKS, TEST_EVENT, type Webhook, type WebhookDelivery } from "@/lib/domain/webhooks";
import { invalidInput } from "@/lib/errors";
import type { AddWebhookInput } from "@/lib/schemas/webhook";
import { addressProblem } from "@/lib/webhooks/public-address";
import { queueDelivery } from "./tell-webhooks";

const SHOWN = 10;

export type WebhooksView = {
  readonly webhooks: readonly (Webhook & { readonly deliveries: readonly WebhookDelivery[] })[];
  readonly timeZone: string;
};

/** Every webhook with its last deliveries. */
export function webhooksView(scope: TenantScope): Promise<WebhooksView> {
  return withTenant(scope, async () => {
    const { timeZone } = await company(scope).get();
    const all = [];
    for (const one of await webhooks(scope).list())
      all.push({ ...one, deliveries: await webhookDeliveries(scope).list(one.id, SHOWN) });
    return { webhooks: all, timeZone };
  });
}

/** Adds a webhook. What it signs with is in this answer and nowhere else to be read. */
export async function addWebhook(
  scope: TenantScope,
  { url, events }: AddWebhookInput,
): Promise<{ readonly secret: string }> {
  const problem = addressProblem(url);
  if (problem !== null) throw invalidInput([{ field: "url", message: problem }]);
  if ((await webhooks(scope).list()).length >= MOST_WEBHOOKS) {
    const message = `There are ${MOST_WEBHOOKS} webhooks. Remove one that is not needed first.`;
    throw invalidInput([{ field: "url", message }]);
  }
  const id = asId<"webhook">(randomUUID());
  const secret = `dewlsign_${makeSecret().secret}`;
  await webhooks(scope).add({ id, url: new URL(url).href, events, secretSealed: sealSecret(secret, id) });
  return { secret };
}

export async function switchWebhook(
  scope: TenantScope,
  { webhookId, on }: { readonly webhookId: string; readonly on: boolean },
): Promise<void> {
  await webhooks(scope).switchTo(webhookId, on);
}

export async function removeWebhook(
  scope: TenantScope,
  { webhookId }: { readonly webhookId: string },
): Promise<void> {
  await webhooks(scope).remove(webhookId);
}

/** Sends something harmless, to see whether it arrives. */
export function testWebhook(
  scope: TenantScope,
  { webhookId }: { readonly webhookId: string },
): Promise<void> {
  return withTenant(scope, async () => {
    const made = await webhookDeliveries(scope).addTo(webhookId, TEST_EVENT, {});
    await queueDelivery(scope, TEST_EVENT, made);
  });
}

/** Sends an ended delivery again as it was, under the same id. */
export function resendDelivery(
  scope: TenantScope,
  { deliveryId }: { readonly deliveryId: string },
): Promise<void> {
  return withTenant(scope, async () => {
    const made = await webhookDeliveries(scope).again(deliveryId);
    await queueDelivery(scope, made.event, made);
  });
}
