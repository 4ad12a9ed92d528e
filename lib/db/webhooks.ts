import { asId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import type { Webhook, WebhookEvent, WebhookId } from "@/lib/domain/webhooks";
import { notFound } from "@/lib/errors";
import { appendActivity } from "./activity";
import { withTenant } from "./with-tenant";

/** The addresses a company has its events told to. A secret is kept sealed, to sign with. */
export function webhooks(scope: TenantScope) {
  const own = { tenantId: scope.tenantId, removedAt: null };
  return {
    list: (): Promise<readonly Webhook[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.webhook.findMany({
          where: own,
          orderBy: { id: "asc" },
          omit: { secretSealed: true },
          include: { createdByMember: { select: { name: true } } },
        });
        return rows.map((row) => ({
          id: asId<"webhook">(row.id),
          url: row.url,
          events: row.events as WebhookEvent[],
          failures: row.failures,
          createdAt: row.createdAt.toISOString(),
          createdByName: row.createdByMember.name,
          pausedAt: row.pausedAt?.toISOString() ?? null,
          pausedReason: row.pausedReason,
        }));
      }),

    add: (made: {
      readonly id: WebhookId;
      readonly url: string;
      readonly events: readonly WebhookEvent[];
      readonly secretSealed: string;
    }): Promise<void> =>
      withTenant(scope, async (tx) => {
        await tx.webhook.createMany({
          data: {
            tenantId: scope.tenantId,
            ...made,
            events: [...made.events],
            createdBy: scope.userId,
            updatedBy: scope.userId,
          },
        });
        await appendActivity(tx, scope, {
          action: "webhook added",
          entity: "webhook",
          entityId: made.id,
          after: { url: made.url, events: made.events },
        });
      }),

    /** Switches it on or off by hand. Switched on it has a clean slate. */
    switchTo: (id: string, on: boolean): Promise<void> =>
      withTenant(scope, async (tx) => {
        const found = await tx.webhook.findFirst({
          where: { ...own, id },
          select: { url: true, pausedAt: true },
        });
        if (!found) throw notFound();
        if ((found.pausedAt === null) === on) return;
        await tx.webhook.updateMany({
          where: { ...own, id },
          data: { ...changed(scope), pausedAt: on ? null : new Date(), pausedReason: "", failures: 0 },
        });
        await appendActivity(tx, scope, {
          action: on ? "webhook switched on" : "webhook switched off",
          entity: "webhook",
          entityId: id,
          after: { url: found.url },
        });
      }),

    /** Takes it away, with what it signs with. Its deliveries stay as history. */
    remove: (id: string): Promise<void> =>
      withTenant(scope, async (tx) => {
        const found = await tx.webhook.findFirst({ where: { ...own, id }, select: { url: true } });
        if (!found) throw notFound();
        await tx.webhook.updateMany({
          where: { ...own, id },
          data: { ...changed(scope), removedAt: new Date(), secretSealed: "" },
        });
        await appendActivity(tx, scope, {
          action: "webhook removed",
          entity: "webhook",
          entityId: id,
          before: { url: found.url },
        });
      }),
  };
}

const changed = (scope: TenantScope) => ({
  version: { increment: 1 },
  updatedAt: new Date(),
  updatedBy: scope.userId,
});
