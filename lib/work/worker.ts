import { EventEmitter } from "node:events";
import { setTimeout as pause } from "node:timers/promises";
import { Logger, run, type TaskList, type WorkerEvents } from "graphile-worker";
import { openRoll, type Roll } from "@/lib/db/unscoped/dead-workers";
import { AFTER_ERASURE } from "@/lib/db/unscoped/erase-company";
import { env } from "@/lib/env";
import { failureFacts } from "@/lib/server/failure";
import { log } from "@/lib/server/request-log";
import { finishDeletion } from "@/lib/services/delete-company";
import { CRONTAB, EVERY_HOUR, everyHour } from "./every-hour";
import { runTask } from "./run-task";
import { TASKS, type TaskDefinition } from "./tasks";

/** Pieces of work at the same time. Each waits for the database most of its time. */
const AT_ONCE = 3;
const LOOK_FOR_DEAD_MS = 10_000;
/** A worker enters the roll before its first work is this old. */
const ENTERED_WITHIN_MS = 3_000;
const AGAIN_MS = 2_000;
/** While the database stays away this is said once a minute, not every time. */
const SAID_EVERY = 30;

export type Worker = { readonly stop: () => Promise<void> };

/**
 * Does background work in this process until it is stopped. While the database is away it waits. What a process
 * that was killed had begun is taken up again within seconds, by this or any other worker.
 */
export function startWorker(tasks: ReadonlyMap<string, TaskDefinition> = TASKS): Worker {
  const ended = new AbortController();
  const working = (async () => {
    let failures = 0;
    while (!ended.signal.aborted) {
      const begun = performance.now();
      try {
        await workUntilBroken(tasks, ended.signal);
      } catch (error) {
        if (performance.now() - begun > SAID_EVERY * AGAIN_MS) failures = 0;
        if (failures++ % SAID_EVERY === 0)
          log().error({ work: "worker", failures, error: failureFacts(error) });
      }
      if (!ended.signal.aborted) await pause(AGAIN_MS, undefined, { signal: ended.signal }).catch(() => null);
    }
  })();
  return {
    stop: async () => {
      ended.abort();
      await working;
    },
  };
}

async function workUntilBroken(
  tasks: ReadonlyMap<string, TaskDefinition>,
  signal: AbortSignal,
): Promise<void> {
  const roll = await openRoll();
  try {
    const events: WorkerEvents = new EventEmitter();
    const entered: Promise<void>[] = [];
    // Work is held under the name of the pool, not of the one in it that does the work.
    events.on("pool:create", ({ workerPool }) => entered.push(roll.enter(workerPool.id)));
    const runner = await run({
      connectionString: env().DATABASE_URL,
      concurrency: AT_ONCE,
      maxPoolSize: AT_ONCE + 2,
      events,
      taskList: { ...taskList(tasks), [EVERY_HOUR]: () => everyHour(), [AFTER_ERASURE]: finishDeletion },
      crontab: CRONTAB,
      // The process is the server's: it decides when to end, and signals are its to handle.
      noHandleSignals: true,
      logger: new Logger(() => () => undefined),
    });
    const looking = new AbortController();
    const broken = lookForDead(roll, AbortSignal.any([signal, looking.signal]));
    try {
      await Promise.all(entered);
      await Promise.race([runner.promise, broken]);
    } finally {
      looking.abort();
      await runner.stop().catch(() => undefined);
    }
  } finally {
    await roll.close().catch(() => undefined);
  }
}

/** Ends when the signal does; throws when the roll's session is lost, and with it the sign of life. */
async function lookForDead(roll: Roll, signal: AbortSignal): Promise<void> {
  while (!signal.aborted) {
    const released = await roll.release(ENTERED_WITHIN_MS);
    if (released > 0) log().info({ work: "worker", released });
    await pause(LOOK_FOR_DEAD_MS, undefined, { signal }).catch(() => null);
  }
}

function taskList(tasks: ReadonlyMap<string, TaskDefinition>): TaskList {
  return Object.fromEntries(
    [...tasks].map(([name, task]) => [name, (payload: unknown) => runTask(name, task, payload)]),
  );
}
