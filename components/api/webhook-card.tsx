"use client";

import { Press } from "@/components/forms/press";
import type { Answer } from "@/components/forms/use-sent-form";
import { Badge } from "@/components/ui/badge";
import { Card } from "@/components/ui/card";
import { Notice } from "@/components/ui/notice";
import { WEBHOOK_EVENTS, type Webhook, type WebhookDelivery } from "@/lib/domain/webhooks";
import { WebhookHistory } from "./webhook-history";

type Act = (input: unknown) => Promise<Answer>;
export type WebhookActions = {
  readonly turn: Act;
  readonly remove: Act;
  readonly tryOut: Act;
  readonly resend: Act;
};
type Props = {
  readonly webhook: Webhook & { readonly deliveries: readonly WebhookDelivery[] };
  readonly timeZone: string;
  readonly actions: WebhookActions;
};

/** One address: what it is told, whether it is on, and what became of the last deliveries. */
export function WebhookCard({ webhook, timeZone, actions }: Props) {
  const { id, url, events, pausedAt, pausedReason, deliveries } = webhook;
  const { hostname } = new URL(url);
  const isOn = pausedAt === null;
  return (
    <Card title={hostname}>
      <p className="text-sm break-all text-muted">{url}</p>
      <p className="mt-2">
        <Badge tone={isOn ? "accent" : "muted"}>{isOn ? "on" : "off"}</Badge>
      </p>
      <ul className="mt-2 list-disc pl-5 text-sm">
        {events.map((event) => (
          <li key={event}>{WEBHOOK_EVENTS[event]}</li>
        ))}
      </ul>
      {pausedReason === "" ? null : (
        <Notice kind="problem" title="Switched off, because nothing arrived" className="mt-3">
          {pausedReason} Switch it on again when the program is well.
        </Notice>
      )}
      <div className="mt-3 flex flex-wrap gap-2">
        {isOn ? (
          <Press act={() => actions.tryOut({ webhookId: id })} label={`Send a test to ${hostname}`}>
            Send a test
          </Press>
        ) : null}
        <Press
          act={() => actions.turn({ webhookId: id, on: !isOn })}
          label={`Switch ${isOn ? "off" : "on"} ${hostname}`}
        >
          {isOn ? "Switch off" : "Switch on"}
        </Press>
        <Press act={() => actions.remove({ webhookId: id })} label={`Remove ${hostname}`}>
          Remove
        </Press>
      </div>
      <WebhookHistory
        hostname={hostname}
        deliveries={deliveries}
        timeZone={timeZone}
        resend={isOn ? actions.resend : null}
      />
    </Card>
  );
}
