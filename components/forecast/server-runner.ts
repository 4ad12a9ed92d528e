import type { ForecastChanges } from "@/lib/domain/forecast";
import type { ForecastRunner, RunnerEvent } from "./forecast-runner";

/**
 * The server, for a browser that has no workers: the saved options, with the same loop. What is being typed is not seen there.
 *
 * @param changedNow - The assumptions as they are set when an order is given.
 */
export function serverRunner(jobId: string, changedNow: () => ForecastChanges): ForecastRunner {
  let running: AbortController | null = null;
  const stop = () => {
    running?.abort();
    running = null;
  };
  return {
    run: (order, tell) => {
      stop();
      const mine = new AbortController();
      running = mine;
      const query = new URLSearchParams({
        changed: JSON.stringify(changedNow()),
        members: String(order.members),
      });
      readLines(`/api/jobs/${jobId}/forecast?${query}`, mine.signal, tell).catch(() => {
        if (!mine.signal.aborted)
          tell({ kind: "failed", problem: "The server did not finish the forecast. Try again." });
      });
    },
    stop,
    close: stop,
  };
}

async function readLines(
  url: string,
  signal: AbortSignal,
  tell: (event: RunnerEvent) => void,
): Promise<void> {
  const answer = await fetch(url, { signal });
  if (!answer.ok || answer.body === null) {
    const said: unknown = await answer.json().catch(() => null);
    const message =
      typeof said === "object" && said !== null && "message" in said ? String(said.message) : null;
    return tell({ kind: "failed", problem: message ?? "The server could not run the forecast." });
  }
  const reader = answer.body.pipeThrough(new TextDecoderStream()).getReader();
  let rest = "";
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return;
    const lines = (rest + value).split("\n");
    rest = lines.pop() ?? "";
    for (const line of lines) if (!signal.aborted) tell(JSON.parse(line) as RunnerEvent);
  }
}
