import { openSecret } from "@/lib/auth/sealed-secret";
import { type DueDelivery, webhookDeliveries } from "@/lib/db/webhook-deliveries";
import type { TenantScope } from "@/lib/domain/scope";
import { DELIVERY_TRIES } from "@/lib/domain/webhooks";
import { AppError } from "@/lib/errors";
import { type Network, NotDeliveredError, postJson } from "@/lib/webhooks/post-json";
import { signatureOf } from "@/lib/webhooks/signature";
import { queueWebhookMail } from "./company-mail/webhook-mail";

/**
 * One try of one delivery. What it sends is signed with the time of the try, so that a listener can refuse what is old.
 *
 * @returns What became of it, in words.
 * @throws AppError when it did not arrive: `UNAVAILABLE` to be tried again, `INVALID_INPUT` after the last try.
 */
export async function deliverWebhook(
  scope: TenantScope,
  { deliveryId }: { readonly deliveryId: string },
  network?: Network,
): Promise<string> {
  const deliveries = webhookDeliveries(scope);
  const due = await deliveries.find(deliveryId);
  if (due === null) return "It is gone.";
  if (due.state === "done") return "It has arrived already.";
  // Given up and taken up again: that is a new round.
  const attempts = due.state === "failed" ? 1 : due.attempts + 1;
  if (!due.webhook.isOn) {
    const problem = "The webhook was off when its turn came.";
    await deliveries.failed(deliveryId, { attempts: due.attempts, responseStatus: null, problem }, true);
    return problem;
  }
  const { status, problem } = await attempt(deliveryId, due, network);
  if (problem === null) {
    await deliveries.arrived(deliveryId, due.webhook.id, attempts, status ?? 0);
    return `Arrived, answered ${status}.`;
  }
  const ends = attempts >= DELIVERY_TRIES;
  await deliveries.failed(deliveryId, { attempts, responseStatus: status, problem }, ends);
  if (ends && (await deliveries.countGivenUp(due.webhook.id, problem)))
    await queueWebhookMail(scope, { webhookId: due.webhook.id, deliveryId });
  throw new AppError(ends ? "INVALID_INPUT" : "UNAVAILABLE", problem);
}

async function attempt(
  deliveryId: string,
  { event, payload, createdAt, webhook }: DueDelivery,
  network: Network | undefined,
): Promise<{ readonly status: number | null; readonly problem: string | null }> {
  const secret = openSecret(webhook.secretSealed, webhook.id);
  if (secret === null)
    return {
      status: null,
      problem: "Its secret cannot be read any more. Remove the webhook and add it anew.",
    };
  const body = JSON.stringify({ id: deliveryId, event, createdAt, data: payload });
  const headers = {
    "user-agent": "Dewledger",
    "dewledger-event": event,
    "dewledger-delivery": deliveryId,
    "dewledger-signature": signatureOf(secret, body, Math.floor(Date.now() / 1_000)),
  };
  try {
    const { status } = await postJson(webhook.url, body, headers, network);
    return { status, problem: problemOf(status) };
  } catch (error) {
    if (error instanceof NotDeliveredError) return { status: null, problem: error.message };
    throw error;
  }
}

function problemOf(status: number): string | null {
  if (status >= 200 && status < 300) return null;
  return status >= 300 && status < 400
    ? `It answered ${status}. Redirects are not followed: give the address it leads to.`
    : `It answered ${status}.`;
}
