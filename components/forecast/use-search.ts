"use client";

import { useEffect, useRef, useState } from "react";
import { type SearchEvent, type SearchOrder, searchBoard } from "@/lib/domain/forecast";
import type { SearchProgress, SettingSensitivity } from "@/lib/engineering/simulation";
import { workerCount } from "./forecast-runner";
import type { SearchWorkerOrder } from "./search-worker";

export type SearchRun = {
  readonly phase: "idle" | "running" | "done" | "stopped" | "failed";
  readonly progress: SearchProgress | null;
  readonly settings: readonly SettingSensitivity[];
  readonly problem: string | null;
};
const IDLE: SearchRun = { phase: "idle", progress: null, settings: [], problem: null };

/** A search of settings shared among workers of this browser; first the combinations, then each setting turned around the best. */
export function useSearch(weatherUrl: string) {
  const [run, setRun] = useState<SearchRun>(IDLE);
  const workers = useRef<readonly Worker[]>([]);
  const end = () => {
    for (const worker of workers.current) worker.terminate();
    workers.current = [];
  };
  useEffect(
    () => () => {
      for (const worker of workers.current) worker.terminate();
    },
    [],
  );

  const fail = (problem: string) => {
    end();
    setRun((one) => ({ ...one, phase: "failed", problem }));
  };
  const start = async (order: Omit<SearchOrder, "weather">) => {
    end();
    setRun({ ...IDLE, phase: "running" });
    try {
      const of = workerCount();
      const mine = Array.from(
        { length: of },
        () => new Worker(new URL("./search-worker.ts", import.meta.url), { type: "module" }),
      );
      workers.current = mine;
      const tell = (worker: Worker, told: SearchWorkerOrder) => worker.postMessage(told);
      const board = searchBoard(order);
      let turning = false;
      const hear = (event: SearchEvent) => {
        if (workers.current !== mine) return;
        if (event.kind === "failed") return fail(event.problem);
        const { progress, settings, around, isDone } = board(event);
        setRun({ phase: isDone ? "done" : "running", progress, settings, problem: null });
        if (isDone) return end();
        if (around === null || turning) return;
        turning = true;
        for (const [index, worker] of mine.entries())
          tell(worker, { order: null, task: { around, index, of } });
      };
      const answer = await fetch(weatherUrl);
      if (workers.current !== mine) return;
      if (!answer.ok) return fail(`The weather year could not be read (${answer.status}).`);
      const weather = await answer.arrayBuffer();
      for (const [index, worker] of mine.entries()) {
        worker.onerror = () => fail("The search stopped unexpectedly. Start it again.");
        worker.onmessage = ({ data }: MessageEvent<SearchEvent>) => hear(data);
        tell(worker, { order: { ...order, weather }, task: { around: null, index, of } });
      }
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
