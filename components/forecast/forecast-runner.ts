import type { ForecastEvent } from "@/lib/domain/forecast";
import type { ForecastInput } from "@/lib/engineering/simulation";
import type { WorkerAnswer, WorkerOrder } from "./forecast-worker";

export type ForecastOrder = Omit<ForecastInput, "weather">;
export type RunnerEvent = ForecastEvent | { readonly kind: "done" };

/** What runs forecasts, wherever it does. One order at a time: a newer one stops the one before. */
export type ForecastRunner = {
  readonly run: (order: ForecastOrder, tell: (event: RunnerEvent) => void) => void;
  readonly stop: () => void;
  readonly close: () => void;
};

/** More share the years without gaining much, and take the page's own processor. */
const MOST_WORKERS = 4;

/** How many workers share what is to be run: all cores but the page's own. */
export function workerCount(): number {
  return Math.max(1, Math.min(MOST_WORKERS, (navigator.hardwareConcurrency ?? 2) - 1));
}

/**
 * Workers of this browser.
 *
 * @param weatherUrl - Where the year's bytes are; fetched once.
 * @throws Error where the browser has no workers.
 */
export function browserRunner(weatherUrl: string): ForecastRunner {
  const of = workerCount();
  const workers = Array.from(
    { length: of },
    () => new Worker(new URL("./forecast-worker.ts", import.meta.url), { type: "module" }),
  );
  let run = 0;
  const sent = new Set<Worker>();
  const weather = fetch(weatherUrl).then((answer) => {
    if (!answer.ok) throw new Error(`The weather year could not be read (${answer.status}).`);
    return answer.arrayBuffer();
  });
  return {
    run: (order, tell) => {
      run += 1;
      const mine = run;
      let working = of;
      const fail = (problem: string) => {
        if (mine === run) tell({ kind: "failed", problem });
      };
      weather.then(
        (bytes) => {
          if (mine !== run) return;
          for (const [index, worker] of workers.entries()) {
            worker.onerror = () =>
              fail("The forecast stopped unexpectedly. Reload the page to run it again.");
            worker.onmessage = ({ data }: MessageEvent<WorkerAnswer>) => {
              if (data.run !== run) return;
              if (data.event.kind !== "done") {
                // Every worker finds the same house; one of them says so.
                if (data.event.kind === "ready" && index > 0) return;
                return tell(data.event);
              }
              working -= 1;
              if (working === 0) tell(data.event);
            };
            const first = !sent.has(worker);
            sent.add(worker);
            const told: WorkerOrder = {
              run: mine,
              input: order,
              weather: first ? bytes.slice(0) : null,
              share: { index, of },
            };
            worker.postMessage(told, told.weather === null ? [] : [told.weather]);
          }
        },
        (error: unknown) =>
          fail(error instanceof Error ? error.message : "The weather year could not be read."),
      );
    },
    stop: () => {
      run += 1;
      for (const worker of workers)
        worker.postMessage({ run, input: null, weather: null, share: { index: 0, of } });
    },
    close: () => {
      run += 1;
      for (const worker of workers) worker.terminate();
    },
  };
}
