import { expect, test, vi } from "vitest";
import { startWorker } from "@/lib/work/worker";

const told = vi.hoisted(() => ({ error: vi.fn(), info: vi.fn(), pauses: 0 }));
vi.mock("@/lib/server/request-log", () => ({ log: () => told }));
vi.mock("@/lib/db/unscoped/dead-workers", () => ({
  openRoll: () => Promise.reject(new Error("the database is away")),
}));
vi.mock("node:timers/promises", () => ({
  setTimeout: () => {
    told.pauses++;
    return new Promise((resolve) => setImmediate(resolve));
  },
}));

test("while the database is away this is said at every thirtieth try, once a minute, and with the count", async () => {
  const worker = startWorker();
  await vi.waitUntil(() => told.pauses >= 1_800, { timeout: 20_000 });
  await worker.stop();
  const counts = told.error.mock.calls.map(([line]) => (line as { failures: number }).failures);
  expect(counts.slice(0, 3)).toEqual([1, 31, 61]);
  expect(counts).toHaveLength(Math.ceil(told.pauses / 30));
});
