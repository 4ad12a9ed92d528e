import path from "node:path";
import { Worker } from "node:worker_threads";
import { build } from "esbuild";
import { type ForecastEvent, packWeather } from "@/lib/domain/forecast";
import { type ForecastInput, gatherForecast, type MemberYear } from "@/lib/engineering/simulation";
import { BASE, HOUSE, SYSTEM, stageAt } from "../engineering/simulation/fixtures";
import type { BenchOrder } from "./forecast-bench-worker";

/*
 * A forecast of six options with ten members each through workers, as the browser runs it: fresh workers, their script in one piece, the
 * weather as bytes, every year sent back and gathered.
 */
const WORKERS = 2;
const MEMBERS = 10;
const mark = (met: boolean) => (met ? "met" : "NOT met");

const { ventilation, controls, dehumidifier, weather } = BASE;
const INPUT: Omit<ForecastInput, "weather"> = {
  house: { kind: "given", house: HOUSE },
  options: [700, 800, 900, 1_000, 1_100, 1_200].map((cfm) => ({
    name: `${cfm} cfm`,
    system: { ...SYSTEM, stages: [stageAt(cfm, 100)] },
    controls,
    ventilation,
    dehumidifier,
  })),
  humidityLimitPct: 60,
  members: MEMBERS,
  seed: 1,
};

type Said = ForecastEvent | { readonly kind: "done" | "loaded" };

/** A line for the bench's report. */
export async function workersLine(): Promise<string> {
  const script = await workerScript();
  const workers = Array.from({ length: WORKERS }, () => new Worker(script, { eval: true, execArgv: [] }));
  await Promise.all(workers.map((worker) => told(worker, "loaded")));
  const start = performance.now();
  const years: MemberYear[] = [];
  let firstMs = Number.NaN;
  const ended = workers.map((worker, index) => {
    worker.on("message", (event: Said) => {
      if (event.kind === "failed" || event.kind === "refused") throw new Error(event.problem);
      if (event.kind !== "year") return;
      years.push(event.year);
      gatherForecast({ input: INPUT, years: INPUT.options.length * MEMBERS }, years);
      if (years.length === 1) firstMs = performance.now() - start;
    });
    const order: BenchOrder = {
      input: INPUT,
      weather: packWeather(weather).buffer,
      share: { index, of: WORKERS },
    };
    worker.postMessage(order);
    return told(worker, "done");
  });
  await Promise.all(ended);
  const allS = (performance.now() - start) / 1_000;
  await Promise.all(workers.map((worker) => worker.terminate()));
  return `forecast, six options × ten members, through ${WORKERS} fresh workers: ${allS.toFixed(1)} s; aim ≤ 6 s ${mark(allS <= 6 && years.length === 60)}; first numbers after ${firstMs.toFixed(0)} ms, aim < 500 ms ${mark(firstMs < 500)}`;
}

/** A worker does not inherit the loader that reads TypeScript, and one file after the other would be slower than any browser's. */
async function workerScript(): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [path.join(import.meta.dirname, "forecast-bench-worker.ts")],
    ...{ bundle: true, write: false, platform: "node", format: "cjs", logLevel: "error" },
  });
  return outputFiles[0]?.text ?? "";
}

function told(worker: Worker, kind: Said["kind"]): Promise<void> {
  return new Promise((resolve, reject) => {
    worker.on("error", reject);
    worker.on("message", (event: Said) => {
      if (event.kind === kind) resolve();
    });
  });
}
