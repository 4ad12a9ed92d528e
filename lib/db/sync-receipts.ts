import type { TenantScope } from "@/lib/domain/scope";
import { asJson } from "./json";
import { withTenant } from "./with-tenant";

export type SyncReceipt = {
  readonly userId: string;
  readonly requestHash: string;
  readonly response: unknown;
};

export function syncReceipts(scope: TenantScope) {
  return {
    /** What was answered to an upload of this id, or `null` when none arrived yet. */
    find: (clientId: string): Promise<SyncReceipt | null> =>
      withTenant(scope, (tx) =>
        tx.syncReceipt.findFirst({
          where: { tenantId: scope.tenantId, clientId },
          select: { userId: true, requestHash: true, response: true },
        }),
      ),

    keep: (receipt: {
      readonly clientId: string;
      readonly kind: string;
      readonly requestHash: string;
      readonly entityId: string;
      readonly response: object;
    }): Promise<void> =>
      withTenant(scope, async (tx) => {
        await tx.syncReceipt.create({
          data: {
            ...receipt,
            tenantId: scope.tenantId,
            userId: scope.userId,
            response: asJson(receipt.response),
          },
        });
      }),
  };
}
