import { Client } from "pg";
import { env } from "@/lib/env";

/** Any number, the same in all workers: with a worker's name it is the lock that says "I am alive". */
const ALIVE = 720_116_112;

export type Roll = {
  /** Says that a worker of this process is alive for as long as this process is. */
  readonly enter: (workerId: string) => Promise<void>;
  /** Gives work held by workers that are no more back to the queue; answers how many workers that were. */
  readonly release: (heldForMs: number) => Promise<number>;
  readonly close: () => Promise<void>;
};

/**
 * The queue itself frees the work of a killed process only after hours. A session's advisory lock ends with
 * the process, however it ends, so whoever can take a worker's lock knows that the worker is gone.
 */
export async function openRoll(): Promise<Roll> {
  const client = new Client({ connectionString: env().DATABASE_URL });
  const own = new Set<string>();
  // One after the other: a connection answers one question at a time.
  let entered: Promise<unknown> = Promise.resolve();
  // A server that stops ends this session; the next call says so.
  client.on("error", () => undefined);
  await client.connect();
  return {
    enter: async (workerId) => {
      own.add(workerId);
      entered = entered.then(() =>
        client.query("SELECT pg_advisory_lock($1, hashtext($2))", [ALIVE, workerId]),
      );
      await entered;
    },
    release: async (heldForMs) => {
      const { rows } = await client.query<{ id: string }>(
        `SELECT DISTINCT locked_by AS id FROM graphile_worker._private_jobs
         WHERE locked_at < now() - make_interval(secs => $1)`,
        [heldForMs / 1_000],
      );
      const others = rows.map((row) => row.id).filter((id) => !own.has(id));
      let released = 0;
      for (const id of others) if (await releaseIfDead(client, id)) released += 1;
      return released;
    },
    close: () => client.end(),
  };
}

async function releaseIfDead(client: Client, workerId: string): Promise<boolean> {
  const { rows } = await client.query<{ dead: boolean }>(
    "SELECT pg_try_advisory_lock($1, hashtext($2)) AS dead",
    [ALIVE, workerId],
  );
  if (!rows[0]?.dead) return false;
  try {
    // The try was cut off and counts for nothing here; work_item counts it and ends what kills every process.
    await client.query(
      "UPDATE graphile_worker._private_jobs SET attempts = greatest(attempts - 1, 0) WHERE locked_by = $1",
      [workerId],
    );
    await client.query("SELECT graphile_worker.force_unlock_workers(ARRAY[$1])", [workerId]);
    return true;
  } finally {
    await client.query("SELECT pg_advisory_unlock($1, hashtext($2))", [ALIVE, workerId]);
  }
}
