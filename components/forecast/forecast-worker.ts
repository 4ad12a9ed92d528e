import { type ForecastEvent, forecastEvents, unpackWeather } from "@/lib/domain/forecast";
import type { ForecastInput } from "@/lib/engineering/simulation";
import type { Weather } from "@/lib/engineering/weather";

/*
 * The browser's worker: years of a forecast, away from the page. A newer order stops the one before between two years.
 */

export type WorkerOrder = {
  readonly run: number;
  /** `null` stops what runs. */
  readonly input: Omit<ForecastInput, "weather"> | null;
  /** The weather's bytes, sent once; later orders keep it. */
  readonly weather: ArrayBuffer | null;
  readonly share: { readonly index: number; readonly of: number };
};
export type WorkerAnswer = {
  readonly run: number;
  readonly event: ForecastEvent | { readonly kind: "done" };
};

type Port = {
  postMessage(answer: WorkerAnswer): void;
  onmessage: ((order: MessageEvent<WorkerOrder>) => void) | null;
};
const port = globalThis as unknown as Port;
let latest = 0;
let weather: Weather | null = null;

port.onmessage = ({ data }) => {
  latest = data.run;
  if (data.weather !== null) weather = unpackWeather(data.weather);
  void obey(data);
};

async function obey({ run, input, share }: WorkerOrder): Promise<void> {
  if (input === null || weather === null) return;
  for (const event of forecastEvents({ ...input, weather }, share)) {
    port.postMessage({ run, event });
    // A turn of the loop, so that a newer order or a stop is heard.
    await new Promise((resolve) => setTimeout(resolve));
    if (run !== latest) return;
  }
  port.postMessage({ run, event: { kind: "done" } });
}
