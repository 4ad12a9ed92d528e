import type { TenantScope } from "@/lib/domain/scope";
import { withTenant } from "./with-tenant";

export type SyncReceipt = {
  readonly userId: string;
  readonly requestHash: string;
  readonly response: unknown;
};

export function syncReceipts(scope: TenantScope) {
  return {
    /** Makes a second upload of this id wait until the first has ended. Call it first in the transaction. */
    lock: (clientId: string): Promise<void> =>
      withTenant(scope, async (tx) => {
        await tx.$queryRaw`SELECT true FROM (SELECT pg_advisory_xact_lock(
          hashtextextended(${`receipt ${scope.tenantId} ${clientId}`}, 0))) AS taken`;
      }),

    /** What was answered to an upload of this id, or `null` when none arrived yet. */
    find: (clientId: string): Promise<SyncReceipt | null> =>
      withTenant(scope, async (tx) => {
        const [receipt] = await tx.$queryRaw<readonly SyncReceipt[]>`
          SELECT user_id AS "userId", request_hash AS "requestHash", response FROM sync_receipt
          WHERE tenant_id = ${scope.tenantId}::uuid AND client_id = ${clientId}::uuid`;
        return receipt ?? null;
      }),

    keep: (receipt: {
      readonly clientId: string;
      readonly kind: string;
      readonly requestHash: string;
      readonly entityId: string;
      readonly response: object;
    }): Promise<void> =>
      withTenant(scope, async (tx) => {
        await tx.$executeRaw`
          INSERT INTO sync_receipt (tenant_id, client_id, user_id, kind, request_hash, entity_id, response)
          VALUES (${scope.tenantId}::uuid, ${receipt.clientId}::uuid, ${scope.userId}::uuid, ${receipt.kind},
            ${receipt.requestHash}, ${receipt.entityId}::uuid, ${JSON.stringify(receipt.response)}::jsonb)`;
      }),
  };
}
