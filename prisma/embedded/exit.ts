const SIGNALS = ["SIGINT", "SIGTERM", "SIGHUP"] as const;
const toRun = new Set<() => void>();

/** Runs something when this process ends, however it ends (except by kill -9). Answers how to undo that. */
export function whenProcessEnds(run: () => void): () => void {
  if (toRun.size === 0) {
    process.on("exit", runAll);
    for (const signal of SIGNALS) process.on(signal, onSignal);
  }
  toRun.add(run);
  return () => {
    toRun.delete(run);
    if (toRun.size > 0) return;
    process.off("exit", runAll);
    for (const signal of SIGNALS) process.off(signal, onSignal);
  };
}

function runAll(): void {
  for (const run of toRun) run();
}

function onSignal(signal: NodeJS.Signals): void {
  // Whoever else listens decides when the process ends; its exit then comes here.
  if (process.listenerCount(signal) > 1) return;
  runAll();
  process.off("exit", runAll);
  process.off(signal, onSignal);
  process.kill(process.pid, signal);
}
