import type { Prisma } from "../generated/client";
import { runTransaction } from "../transaction";

/** A transaction that sees the few columns of all companies that sign-in, links and tokens need. */
export type UnscopedTransaction = Prisma.TransactionClient;

/**
 * Runs work before a company is known. What it may touch is granted table by table in the migrations;
 * jobs, customers and records are out of its reach.
 */
export async function unscopedTransaction<T>(work: (tx: UnscopedTransaction) => Promise<T>): Promise<T> {
  return runTransaction(async (tx) => {
    await tx.$queryRaw`SELECT set_config('role', 'app_unscoped', true)`;
    return work(tx);
  });
}
