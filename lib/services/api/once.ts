import { syncReceipts } from "@/lib/db/sync-receipts";
import { withTenant } from "@/lib/db/with-tenant";
import type { TenantScope } from "@/lib/domain/scope";
import { AppError } from "@/lib/errors";

export type Sending = { readonly key: string; readonly requestHash: string };

/**
 * Does what a program sends, once a key: sent again it gets the first answer. Answer and change are kept together or not at
 * all, so that a lost answer is never a doubled change.
 *
 * @throws AppError `CONFLICT` when the key was used for something else.
 */
export function once<T extends object>(
  scope: TenantScope,
  kind: string,
  { key, requestHash }: Sending,
  work: () => Promise<{ readonly answer: T; readonly entityId: string }>,
): Promise<T> {
  return withTenant(scope, async () => {
    const receipts = syncReceipts(scope);
    await receipts.lock(key);
    const earlier = await receipts.find(key);
    if (earlier !== null) {
      if (earlier.requestHash === requestHash) return earlier.response as T;
      const message = "Idempotency-Key: this key was used for something else. Make a new one.";
      throw new AppError("CONFLICT", message, { fields: [{ field: "Idempotency-Key", message }] });
    }
    const { answer, entityId } = await work();
    await receipts.keep({ clientId: key, kind, requestHash, entityId, response: answer });
    return answer;
  });
}
