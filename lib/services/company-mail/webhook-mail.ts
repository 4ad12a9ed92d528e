import { webhooks } from "@/lib/db/webhooks";
import { workItems } from "@/lib/db/work-items";
import type { TenantScope } from "@/lib/domain/scope";
import { env } from "@/lib/env";
import { sendOnce } from "./send-once";

/** The delivery that was the last straw tells one switching-off from the next. */
export type WebhookMail = { readonly webhookId: string; readonly deliveryId: string };

/** Asks for the mail that a webhook was switched off. */
export async function queueWebhookMail(scope: TenantScope, mail: WebhookMail): Promise<void> {
  await workItems(scope).add({
    task: "mail about a webhook",
    title: "Mail: a webhook was switched off",
    input: mail,
    key: keyOf(mail),
  });
}

/** Mails it to the owners. */
export async function mailWebhookOff(scope: TenantScope, mail: WebhookMail): Promise<string> {
  const found = (await webhooks(scope).list()).find((one) => one.id === mail.webhookId);
  if (found === undefined || found.pausedAt === null) return "It is on again, or gone.";
  const { hostname } = new URL(found.url);
  return sendOnce(scope, {
    kind: "programs",
    key: keyOf(mail),
    message: {
      subject: `Webhook switched off: ${hostname}`,
      text: [
        `Deliveries to ${found.url} were given up again and again; the last time: ${found.pausedReason}`,
        "",
        "It is told nothing any more. When its program is well, switch it on again; what was given up can be sent again there:",
        `${env().NEXTAUTH_URL}/company/webhooks`,
      ].join("\n"),
    },
  });
}

const keyOf = ({ webhookId, deliveryId }: WebhookMail) => `webhook ${webhookId} off ${deliveryId}`;
