import { PrismaPg } from "@prisma/adapter-pg";
import { env } from "@/lib/env";
import { PrismaClient } from "./generated/client";
import { statementNames } from "./statement-names";

/** Kept on the global object, so that a reload in development does not open a second pool. */
const kept = globalThis as typeof globalThis & { dewledgerDatabase?: PrismaClient };

/** Connections of one process. PostgreSQL serves 100 unless told otherwise. */
const POOL_SIZE = 20;
/** Statements that each connection keeps planned. */
const MOST_STATEMENTS = 300;

/**
 * The database client. Connects at the first query, so that a build opens nothing.
 * Its own role sees no company's rows: read and write through `withTenant` or `lib/db/unscoped`.
 */
export function database(): PrismaClient {
  kept.dewledgerDatabase ??= new PrismaClient({
    adapter: new PrismaPg(
      {
        connectionString: env().DATABASE_URL,
        max: POOL_SIZE,
        connectionTimeoutMillis: 10_000,
        // A connection keeps its planned statements: a lull in the work shall not throw them away.
        idleTimeoutMillis: 300_000,
        // A transaction that was begun and forgotten would hold its locks for ever.
        idle_in_transaction_session_timeout: 120_000,
      },
      // An idle connection fails when PostgreSQL stops. Without a listener that would end the process;
      // the pool replaces the connection, and a query that needs one says so itself.
      {
        onPoolError: () => undefined,
        onConnectionError: () => undefined,
        statementNameGenerator: statementNames(MOST_STATEMENTS),
      },
    ),
  });
  return kept.dewledgerDatabase;
}

/** Ends all connections. The next query opens new ones. */
export async function closeDatabase(): Promise<void> {
  const open = kept.dewledgerDatabase;
  delete kept.dewledgerDatabase;
  await open?.$disconnect();
}
