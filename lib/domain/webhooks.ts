import type { Id } from "./ids";

export type WebhookId = Id<"webhook">;
export type WebhookDeliveryId = Id<"webhook delivery">;

/** What a company's own programs can be told of. */
export const WEBHOOK_EVENTS = {
  "startup.signed": "A startup record was signed",
  "callback.opened": "A callback came in, or a log opened one again",
  "review.due": "A humidity review is due and not signed",
  "review.fell_short": "A humidity review was signed that falls short",
  "packet.sent": "A packet was sent",
} as const;
export type WebhookEvent = keyof typeof WEBHOOK_EVENTS;
export const WEBHOOK_EVENT_KEYS = Object.keys(WEBHOOK_EVENTS) as readonly WebhookEvent[];

/** Sent when an owner asks for it, whatever events were picked. */
export const TEST_EVENT = "test";

export const MOST_WEBHOOKS = 10;
/** Tries of one delivery: eight, with pauses that grow, about half an hour in all. */
export const DELIVERY_TRIES = 8;
/** So many deliveries given up one after the other switch a webhook off. */
export const FAILURES_TO_OFF = 3;

export type Webhook = {
  readonly id: WebhookId;
  readonly url: string;
  readonly events: readonly WebhookEvent[];
  /** Deliveries given up since the last that arrived. */
  readonly failures: number;
  readonly createdAt: string;
  readonly createdByName: string;
  /** When it was switched off; `null` while it is on. */
  readonly pausedAt: string | null;
  /** Why it was switched off by itself; empty when an owner did it. */
  readonly pausedReason: string;
};

export const DELIVERY_STATES = {
  waiting: "waiting",
  running: "being sent",
  done: "arrived",
  failed: "given up",
} as const;
export type DeliveryState = keyof typeof DELIVERY_STATES;

export type WebhookDelivery = {
  readonly id: WebhookDeliveryId;
  readonly event: string;
  readonly state: DeliveryState;
  readonly attempts: number;
  readonly responseStatus: number | null;
  readonly problem: string;
  readonly createdAt: string;
  readonly deliveredAt: string | null;
};
