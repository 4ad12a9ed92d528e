import { type ChildProcess, spawn } from "node:child_process";
import { createRequire } from "node:module";
import path from "node:path";
import { setTimeout as pause } from "node:timers/promises";

const ROOT = path.resolve(import.meta.dirname, "..");
const READY_WITHIN_MS = 60_000;
const STOP_WITHIN_MS = 15_000;

export type ChildApplication = {
  /** Settles when the application ends, with its exit code. */
  readonly ended: Promise<number>;
  readonly stop: () => Promise<void>;
};

/** Starts the built application on a port, in a process of its own. */
export function startApplication(port: string): ChildApplication {
  const next = createRequire(import.meta.url).resolve("next/dist/bin/next");
  const child = spawn(process.execPath, [next, "start", "-p", port], {
    cwd: ROOT,
    stdio: ["ignore", "inherit", "inherit"],
    // Prisma's adapter queues queries on one connection, which pg 8 allows and only warns of.
    env: { ...process.env, NODE_OPTIONS: `${process.env.NODE_OPTIONS ?? ""} --no-deprecation`.trim() },
  });
  const ended = new Promise<number>((resolve, reject) => {
    child.once("error", reject);
    child.once("exit", (code, signal) => resolve(signal ? 0 : (code ?? 0)));
  });
  return { ended, stop: () => stopChild(child, ended) };
}

async function stopChild(child: ChildProcess, ended: Promise<number>): Promise<void> {
  child.kill("SIGTERM");
  const lateKill = setTimeout(() => child.kill("SIGKILL"), STOP_WITHIN_MS);
  await ended.catch(() => 0);
  clearTimeout(lateKill);
}

/** Waits until the application says that process, database and migrations are well. */
export async function waitUntilHealthy(port: string, application: ChildApplication): Promise<void> {
  const tooLate = Date.now() + READY_WITHIN_MS;
  const endedEarly = application.ended.then((code) => {
    throw new Error(`The application ended with ${code} before it answered.`);
  });
  while (Date.now() < tooLate) {
    const healthy = fetch(`http://127.0.0.1:${port}/api/health`).then(
      (answer) => answer.ok,
      () => false,
    );
    if (await Promise.race([healthy, endedEarly])) {
      endedEarly.catch(() => undefined);
      return;
    }
    await Promise.race([pause(150), endedEarly]);
  }
  throw new Error(`The application did not answer within ${READY_WITHIN_MS / 1_000} s.`);
}
