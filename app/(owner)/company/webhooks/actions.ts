"use server";

import { revalidatePath } from "next/cache";
import { addWebhookSchema, resendSchema, switchWebhookSchema, webhookIdSchema } from "@/lib/schemas/webhook";
import { action } from "@/lib/server/action";
import {
  addWebhook,
  removeWebhook,
  resendDelivery,
  switchWebhook,
  testWebhook,
} from "@/lib/services/webhooks";

const permission = "tokens.manage" as const;

function refreshed<Args extends readonly unknown[], R>(run: (...args: Args) => Promise<R>) {
  return async (...args: Args): Promise<R> => {
    const answer = await run(...args);
    revalidatePath("/company/webhooks");
    return answer;
  };
}

export const add = action({
  name: "add webhook",
  permission,
  schema: addWebhookSchema,
  run: refreshed(addWebhook),
});
export const turn = action({
  name: "switch webhook",
  permission,
  schema: switchWebhookSchema,
  run: refreshed(switchWebhook),
});
export const remove = action({
  name: "remove webhook",
  permission,
  schema: webhookIdSchema,
  run: refreshed(removeWebhook),
});
export const tryOut = action({
  name: "test webhook",
  permission,
  schema: webhookIdSchema,
  run: refreshed(testWebhook),
});
export const resend = action({
  name: "send delivery again",
  permission,
  schema: resendSchema,
  run: refreshed(resendDelivery),
});
