import { asId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import {
  type DeliveryState,
  FAILURES_TO_OFF,
  type WebhookDelivery,
  type WebhookDeliveryId,
  type WebhookEvent,
} from "@/lib/domain/webhooks";
import { AppError, notFound } from "@/lib/errors";
import { appendActivity } from "./activity";
import { asJson } from "./json";
import { withTenant } from "./with-tenant";

export type MadeDelivery = { readonly id: WebhookDeliveryId; readonly url: string };

/** What a try needs to know of a delivery. */
export type DueDelivery = {
  readonly event: string;
  readonly payload: unknown;
  readonly state: DeliveryState;
  readonly attempts: number;
  readonly createdAt: string;
  readonly webhook: {
    readonly id: string;
    readonly url: string;
    readonly secretSealed: string;
    readonly isOn: boolean;
  };
};

export function webhookDeliveries(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  return {
    /** Keeps what is to be told to every webhook that is on and wants the event, once an occasion. */
    add: (event: WebhookEvent, occasion: string, payload: object): Promise<readonly MadeDelivery[]> =>
      withTenant(scope, async (tx) => {
        const wanting = await tx.webhook.findMany({
          where: { ...own, removedAt: null, pausedAt: null, events: { has: event } },
          select: { id: true, url: true },
        });
        if (wanting.length === 0) return [];
        const made = await tx.webhookDelivery.createManyAndReturn({
          data: wanting.map(({ id }) => ({
            ...own,
            webhookId: id,
            event,
            occasion,
            payload: asJson(payload),
          })),
          skipDuplicates: true,
          select: { id: true, webhookId: true },
        });
        return made.map(({ id, webhookId }) => ({
          id: asId<"webhook delivery">(id),
          url: wanting.find((one) => one.id === webhookId)?.url ?? "",
        }));
      }),

    /** Keeps something for one webhook alone, which may be told again. */
    addTo: (webhookId: string, event: string, payload: object): Promise<MadeDelivery> =>
      withTenant(scope, async (tx) => {
        const webhook = await tx.webhook.findFirst({
          where: { ...own, id: webhookId, removedAt: null },
          select: { url: true },
        });
        if (!webhook) throw notFound();
        const { id } = await tx.webhookDelivery.create({
          data: { ...own, webhookId, event, payload: asJson(payload) },
          select: { id: true },
        });
        return { id: asId<"webhook delivery">(id), url: webhook.url };
      }),

    /** Puts one that has ended back, to be sent as it was. */
    again: (id: string): Promise<MadeDelivery & { readonly event: string }> =>
      withTenant(scope, async (tx) => {
        const found = await tx.webhookDelivery.findFirst({
          where: { ...own, id, webhook: { removedAt: null } },
          select: { event: true, webhook: { select: { url: true } } },
        });
        if (!found) throw notFound();
        const { count } = await tx.webhookDelivery.updateMany({
          where: { ...own, id, state: { in: ["done", "failed"] } },
          data: { state: "waiting", attempts: 0, problem: null },
        });
        if (count === 0) throw new AppError("CONFLICT", "This delivery is on its way already.");
        await appendActivity(tx, scope, {
          action: "webhook delivery sent again",
          entity: "webhook",
          entityId: id,
          after: { url: found.webhook.url, event: found.event },
        });
        return { id: asId<"webhook delivery">(id), url: found.webhook.url, event: found.event };
      }),

    /** The newest of one webhook first. */
    list: (webhookId: string, take: number): Promise<readonly WebhookDelivery[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.webhookDelivery.findMany({
          where: { ...own, webhookId },
          orderBy: [{ createdAt: "desc" }, { id: "desc" }],
          take,
          omit: { payload: true },
        });
        return rows.map((row) => ({
          id: asId<"webhook delivery">(row.id),
          event: row.event,
          state: row.state as DeliveryState,
          attempts: row.attempts,
          responseStatus: row.responseStatus,
          problem: row.problem ?? "",
          createdAt: row.createdAt.toISOString(),
          deliveredAt: row.deliveredAt?.toISOString() ?? null,
        }));
      }),

    find: (id: string): Promise<DueDelivery | null> =>
      withTenant(scope, async (tx) => {
        const row = await tx.webhookDelivery.findFirst({ where: { ...own, id }, include: { webhook: true } });
        if (!row) return null;
        const { webhook, event, payload, attempts, createdAt } = row;
        const { id: webhookId, url, secretSealed, removedAt, pausedAt } = webhook;
        return {
          event,
          payload,
          attempts,
          state: row.state as DeliveryState,
          createdAt: createdAt.toISOString(),
          webhook: { id: webhookId, url, secretSealed, isOn: removedAt === null && pausedAt === null },
        };
      }),

    /** Keeps that it arrived, and that its webhook is well. */
    arrived: (id: string, webhookId: string, attempts: number, responseStatus: number): Promise<void> =>
      withTenant(scope, async (tx) => {
        await tx.webhookDelivery.updateMany({
          where: { ...own, id },
          data: { state: "done", attempts, responseStatus, problem: null, deliveredAt: new Date() },
        });
        await tx.webhook.updateMany({
          where: { ...own, id: webhookId, failures: { gt: 0 } },
          data: { failures: 0 },
        });
      }),

    /** Keeps why a try failed. `ends`: there is no other. */
    failed: (
      id: string,
      said: { readonly attempts: number; readonly responseStatus: number | null; readonly problem: string },
      ends: boolean,
    ): Promise<void> =>
      withTenant(scope, async (tx) => {
        await tx.webhookDelivery.updateMany({
          where: { ...own, id },
          data: { ...said, state: ends ? "failed" : "waiting" },
        });
      }),

    /** Counts one that was given up. The last of a few switches the webhook off; true when this one did. */
    countGivenUp: (webhookId: string, reason: string): Promise<boolean> =>
      withTenant(scope, async (tx) => {
        const where = { ...own, id: webhookId, pausedAt: null };
        await tx.webhook.updateMany({ where, data: { failures: { increment: 1 } } });
        const off = await tx.webhook.updateMany({
          where: { ...where, failures: { gte: FAILURES_TO_OFF } },
          data: { pausedAt: new Date(), pausedReason: reason },
        });
        if (off.count === 0) return false;
        await appendActivity(tx, scope, {
          action: "webhook switched off by itself",
          entity: "webhook",
          entityId: webhookId,
          reason,
        });
        return true;
      }),
  };
}
