import { parentPort } from "node:worker_threads";
import { forecastEvents, unpackWeather } from "@/lib/domain/forecast";
import type { ForecastInput } from "@/lib/engineering/simulation";

/* One worker of the bench: what the browser's worker does with an order. */

export type BenchOrder = {
  readonly input: Omit<ForecastInput, "weather">;
  readonly weather: ArrayBuffer;
  readonly share: { readonly index: number; readonly of: number };
};

parentPort?.on("message", ({ input, weather, share }: BenchOrder) => {
  for (const event of forecastEvents({ ...input, weather: unpackWeather(weather) }, share))
    parentPort?.postMessage(event);
  parentPort?.postMessage({ kind: "done" });
});
parentPort?.postMessage({ kind: "loaded" });
