"use client";

import { useEffect, useRef, useState } from "react";
import type { SearchEvent, SearchOrder } from "@/lib/domain/forecast";
import type { SearchProgress, SettingSensitivity } from "@/lib/engineering/simulation";
import type { SearchWorkerOrder } from "./search-worker";

export type SearchRun = {
  readonly phase: "idle" | "running" | "done" | "stopped" | "failed";
  readonly progress: SearchProgress | null;
  readonly settings: readonly SettingSensitivity[];
  readonly problem: string | null;
};
const IDLE: SearchRun = { phase: "idle", progress: null, settings: [], problem: null };

/** A search of settings in a worker of this browser. */
export function useSearch(weatherUrl: string) {
  const [run, setRun] = useState<SearchRun>(IDLE);
  const worker = useRef<Worker | null>(null);
  const end = () => {
    worker.current?.terminate();
    worker.current = null;
  };
  useEffect(() => () => worker.current?.terminate(), []);

  const fail = (problem: string) => setRun((one) => ({ ...one, phase: "failed", problem }));
  const start = async (order: Omit<SearchOrder, "weather">) => {
    end();
    setRun({ ...IDLE, phase: "running" });
    try {
      const mine = new Worker(new URL("./search-worker.ts", import.meta.url), { type: "module" });
      worker.current = mine;
      mine.onerror = () => fail("The search stopped unexpectedly. Start it again.");
      mine.onmessage = ({ data }: MessageEvent<SearchEvent>) => setRun((one) => after(one, data));
      const answer = await fetch(weatherUrl);
      if (!answer.ok) return fail(`The weather year could not be read (${answer.status}).`);
      const told: SearchWorkerOrder = { ...order, weather: await answer.arrayBuffer() };
      mine.postMessage(told, [told.weather]);
    } catch {
      fail("This browser cannot run the search. Try a newer one.");
    }
  };
  return {
    run,
    start,
    stop: () => {
      end();
      setRun((one) => (one.phase === "running" ? { ...one, phase: "stopped" } : one));
    },
  };
}

function after(one: SearchRun, event: SearchEvent): SearchRun {
  if (event.kind === "tried") return { ...one, progress: event.progress };
  if (event.kind === "turned") return { ...one, settings: event.settings };
  if (event.kind === "failed") return { ...one, phase: "failed", problem: event.problem };
  return { ...one, phase: "done" };
}
