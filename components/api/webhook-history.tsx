"use client";

import { Press } from "@/components/forms/press";
import type { Answer } from "@/components/forms/use-sent-form";
import { type Column, Table } from "@/components/ui/table";
import { momentText } from "@/lib/domain/date-text";
import { DELIVERY_STATES, DELIVERY_TRIES, type WebhookDelivery } from "@/lib/domain/webhooks";

type Props = {
  readonly hostname: string;
  readonly deliveries: readonly WebhookDelivery[];
  readonly timeZone: string;
  /** `null` while the webhook is off: nothing would be sent. */
  readonly resend: ((input: unknown) => Promise<Answer>) | null;
};

/** The last deliveries of one webhook. */
export function WebhookHistory({ hostname, deliveries, timeZone, resend }: Props) {
  const columns: readonly Column<WebhookDelivery>[] = [
    {
      key: "event",
      head: "Event",
      rowHead: true,
      cell: ({ event, createdAt }) => (
        <>
          {event}
          <span className="block font-normal text-muted">{momentText(createdAt, timeZone)}</span>
        </>
      ),
    },
    {
      key: "state",
      head: "What became of it",
      cell: (delivery) => <Became delivery={delivery} timeZone={timeZone} />,
    },
    {
      key: "again",
      head: <span className="sr-only">Send again</span>,
      cell: ({ id, event, state }) =>
        resend !== null && (state === "done" || state === "failed") ? (
          <Press act={() => resend({ deliveryId: id })} label={`Send again: ${event}`}>
            Send again
          </Press>
        ) : null,
    },
  ];
  return (
    <div className="mt-4">
      <h3 className="mb-1 text-sm font-semibold">Last deliveries</h3>
      <Table
        label={`Last deliveries to ${hostname}`}
        columns={columns}
        rows={deliveries}
        rowKey={(delivery) => delivery.id}
        empty={<p className="text-sm text-muted">Nothing yet.</p>}
      />
    </div>
  );
}

function Became({ delivery, timeZone }: { readonly delivery: WebhookDelivery; readonly timeZone: string }) {
  const { state, attempts, problem, responseStatus, deliveredAt } = delivery;
  return (
    <>
      <span className="font-semibold">{DELIVERY_STATES[state]}</span>
      {state === "done" && deliveredAt !== null ? (
        <span className="block text-muted">
          {momentText(deliveredAt, timeZone)}, answered {responseStatus}
        </span>
      ) : null}
      {problem === "" ? null : (
        <span className="block text-short">
          {problem}
          {attempts > 0 ? ` Try ${attempts} of ${DELIVERY_TRIES}.` : ""}
        </span>
      )}
    </>
  );
}
