import { setTimeout as pause } from "node:timers/promises";
import { AppError } from "@/lib/errors";
import { database } from "./client";
import { Prisma } from "./generated/client";

export type TransactionOptions = {
  /** PostgreSQL's own default is read committed. */
  readonly isolation?: "ReadCommitted" | "RepeatableRead" | "Serializable";
  /** How long the transaction may last, ms. */
  readonly timeoutMs?: number;
};

const ATTEMPTS = 4;
const DEFAULT_TIMEOUT_MS = 30_000;

/**
 * Runs one transaction; again from the start when PostgreSQL ended it because of a concurrent one.
 * `run` may therefore run several times and must do nothing that outlives a rollback.
 */
export async function runTransaction<T>(
  run: (tx: Prisma.TransactionClient) => Promise<T>,
  options: TransactionOptions = {},
): Promise<T> {
  for (let attempt = 1; ; attempt++) {
    try {
      return await database().$transaction(run, {
        ...(options.isolation ? { isolationLevel: options.isolation } : {}),
        maxWait: 10_000,
        timeout: options.timeoutMs ?? DEFAULT_TIMEOUT_MS,
      });
    } catch (error) {
      if (hasWaitedTooLong(error)) {
        throw new AppError(
          "UNAVAILABLE",
          "Too much is being saved at once. Nothing was changed. Try again soon.",
          {
            cause: error,
          },
        );
      }
      if (attempt === ATTEMPTS || !mayBeRepeated(error)) throw error;
      // Spread out, so that the same two do not meet again.
      await pause(2 ** attempt * 5 * (1 + Math.random()));
    }
  }
}

/** P2028: no transaction began in time, or it was ended because it took too long. Both leave nothing behind. */
function hasWaitedTooLong(error: unknown): boolean {
  if (error instanceof Prisma.PrismaClientKnownRequestError && error.code === "P2028") return true;
  // The pool's own words, when every connection stayed in use.
  return error instanceof Error && error.message.includes("timeout exceeded when trying to connect");
}

/** P2034 is Prisma's own code; raw queries carry PostgreSQL's: serialization failure, deadlock. */
function mayBeRepeated(error: unknown): boolean {
  if (error instanceof Prisma.PrismaClientKnownRequestError && error.code === "P2034") return true;
  return ["40001", "40P01"].includes(sqlState(error) ?? "");
}

/** PostgreSQL's code for what went wrong, where the error carries one. */
export function sqlState(error: unknown): string | null {
  for (let one = error, depth = 0; one instanceof Object && depth < 6; depth++) {
    if ("originalCode" in one && typeof one.originalCode === "string") return one.originalCode;
    if ("meta" in one && one.meta instanceof Object && "driverAdapterError" in one.meta)
      one = one.meta.driverAdapterError;
    else if ("cause" in one) one = one.cause;
    else return null;
  }
  return null;
}
