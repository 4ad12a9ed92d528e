import { unscopedTransaction } from "./transaction";

/**
 * Counters in the database, so that several server processes share them and a restart forgets none.
 * One statement counts and reads, so that simultaneous tries cannot slip through between the two.
 */
export const unscopedRateLimit = {
  /** Counts one try and answers how many there were in the window, which begins with the first. */
  count: (key: string, windowSeconds: number): Promise<number> =>
    unscopedTransaction(async (tx) => {
      const rows = await tx.$queryRaw<{ points: number }[]>`
        INSERT INTO rate_limit AS counted (key, points, expire)
        VALUES (${key}, 1, now() + make_interval(secs => ${windowSeconds}))
        ON CONFLICT (key) DO UPDATE SET
          points = CASE WHEN counted.expire > now() THEN counted.points + 1 ELSE 1 END,
          expire = CASE WHEN counted.expire > now() THEN counted.expire ELSE excluded.expire END
        RETURNING points`;
      return rows[0]?.points ?? 0;
    }),

  /** Takes one counted try back. */
  takeBack: (key: string): Promise<void> =>
    unscopedTransaction(async (tx) => {
      await tx.rateLimit.updateMany({
        where: { key, points: { gt: 0 } },
        data: { points: { decrement: 1 } },
      });
    }),

  /** Takes away counters whose window is over: anybody can make one by naming an address nobody has. */
  sweep: (): Promise<void> =>
    unscopedTransaction(async (tx) => {
      await tx.$executeRaw`DELETE FROM rate_limit WHERE expire < now()`;
    }),

  clear: (key: string): Promise<void> =>
    unscopedTransaction(async (tx) => {
      await tx.rateLimit.deleteMany({ where: { key } });
    }),
};
