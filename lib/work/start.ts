import { scopesOfCompanies } from "@/lib/auth/scope";
import { env } from "@/lib/env";
import { failureFacts } from "@/lib/server/failure";
import { log } from "@/lib/server/request-log";
import { queueJudgingAfterRelease } from "@/lib/services/judge-again";
import { startWorker, type Worker } from "./worker";

/** Kept on the global object, so that a reload in development does not start a second one. */
const kept = globalThis as typeof globalThis & { dewledgerWorker?: Worker };

/** Begins background work with the server, unless the settings leave it to another process. */
export function startWithServer(): void {
  if (env().WORKER === "off" || kept.dewledgerWorker) return;
  const worker = startWorker();
  kept.dewledgerWorker = worker;
  // Work that is cut off is taken up again; this only lets what is nearly done be done.
  for (const signal of ["SIGTERM", "SIGINT"] as const) process.once(signal, () => void worker.stop());
  void queueAfterRelease();
}

/** A new release may judge differently from what lists still show. */
async function queueAfterRelease(): Promise<void> {
  try {
    for (const scope of await scopesOfCompanies()) await queueJudgingAfterRelease(scope);
  } catch (error) {
    log().error({ work: "after release", error: failureFacts(error) });
  }
}
