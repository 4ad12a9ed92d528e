import { AsyncLocalStorage } from "node:async_hooks";
import type { TenantScope } from "@/lib/domain/scope";
import type { Prisma } from "./generated/client";
import { runTransaction, type TransactionOptions } from "./transaction";

/** A transaction that sees and writes one company's rows only. */
export type TenantTransaction = Prisma.TransactionClient;

const running = new AsyncLocalStorage<{ readonly tenantId: string; readonly tx: TenantTransaction }>();

/**
 * Runs work inside the scope's company: the database hides and refuses every other company's rows.
 * A call inside another joins its transaction, so that repositories can be combined and all their
 * changes are kept or none. Options of an inner call are those of the outer one.
 *
 * @param work - May run again after a conflict with a concurrent transaction.
 */
export async function withTenant<T>(
  scope: TenantScope,
  work: (tx: TenantTransaction) => Promise<T>,
  options: TransactionOptions = {},
): Promise<T> {
  const outer = running.getStore();
  if (outer) {
    if (outer.tenantId !== scope.tenantId)
      throw new Error("A transaction of one company cannot work for another.");
    return work(outer.tx);
  }
  return runTransaction(async (tx) => {
    await tx.$queryRaw`SELECT set_config('role', 'app_user', true), set_config('app.tenant', ${scope.tenantId}, true)`;
    return running.run({ tenantId: scope.tenantId, tx }, () => work(tx));
  }, options);
}
