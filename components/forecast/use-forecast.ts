"use client";

import { useEffect, useRef, useState } from "react";
import type { ForecastChanges } from "@/lib/domain/forecast";
import {
  type Forecast,
  gatherForecast,
  type HouseAssumption,
  type MemberYear,
  stableText,
  type UncertainNumber,
} from "@/lib/engineering/simulation";
import { browserRunner, type ForecastOrder, type ForecastRunner } from "./forecast-runner";
import { serverRunner } from "./server-runner";

/** What is to be forecast. `null` in its place: something is still missing. */
export type AskedForecast = {
  readonly jobId: string;
  readonly weatherSha256: string;
  readonly order: ForecastOrder;
  readonly changed: ForecastChanges;
};

export type ForecastRun = {
  readonly phase: "waiting" | "running" | "done" | "stopped" | "failed";
  /** In the order of the options asked; an option not yet run again keeps what the run before said of it. */
  readonly forecast: Forecast | null;
  readonly assumptions: readonly HouseAssumption[];
  readonly uncertain: readonly UncertainNumber[];
  /** Why an option's year cannot be run, by its place. */
  readonly refused: Readonly<Record<number, string>>;
  readonly problem: string | null;
  /** From order to first numbers. */
  readonly firstMs: number | null;
  readonly where: "browser" | "server";
};

const NOTHING: ForecastRun = {
  phase: "waiting",
  forecast: null,
  assumptions: [],
  uncertain: [],
  refused: {},
  problem: null,
  firstMs: null,
  where: "browser",
};
/** A slider that moves asks many times a second. */
const SETTLE_MS = 150;
/** How often the page is drawn while years come in. */
const DRAW_MS = 120;

/** Runs the forecast whenever what it follows from changes, in this browser's workers or, without them, on the server. */
export function useForecast(asked: AskedForecast | null) {
  const [run, setRun] = useState<ForecastRun>(NOTHING);
  const [turn, setTurn] = useState(0);
  const runner = useRef<{
    readonly key: string;
    readonly is: ForecastRunner;
    readonly where: "browser" | "server";
  }>(null);
  const now = useRef(asked);
  now.current = asked;
  const key = asked === null ? null : stableText(asked);
  const began = useRef(false);

  useEffect(() => () => runner.current?.is.close(), []);

  // biome-ignore lint/correctness/useExhaustiveDependencies: the key says all that is asked; `turn` asks the same again
  useEffect(() => {
    const order = now.current;
    if (order === null || key === null) return;
    const wait = began.current ? SETTLE_MS : 0;
    began.current = true;
    const timer = setTimeout(() => {
      const { is, where } = runnerFor(order);
      start(is, order.order, where, setRun);
    }, wait);
    return () => {
      clearTimeout(timer);
      runner.current?.is.stop();
    };
  }, [key, turn]);

  function runnerFor({ jobId, weatherSha256 }: AskedForecast) {
    const own = `${jobId} ${weatherSha256}`;
    if (runner.current?.key === own) return runner.current;
    runner.current?.is.close();
    const made = makeRunner(jobId, weatherSha256, () => now.current?.changed ?? { house: {}, system: {} });
    runner.current = { key: own, ...made };
    return runner.current;
  }

  return {
    run,
    stop: () => {
      runner.current?.is.stop();
      setRun((one) => (one.phase === "running" ? { ...one, phase: "stopped" } : one));
    },
    again: () => setTurn((one) => one + 1),
  };
}

function makeRunner(jobId: string, sha256: string, changedNow: () => ForecastChanges) {
  try {
    return {
      is: browserRunner(`/api/jobs/${jobId}/weather?sha256=${sha256}`),
      where: "browser",
    } as const;
  } catch {
    return { is: serverRunner(jobId, changedNow), where: "server" } as const;
  }
}

function start(
  runner: ForecastRunner,
  order: ForecastOrder,
  where: "browser" | "server",
  setRun: (change: (one: ForecastRun) => ForecastRun) => void,
): void {
  const startedAt = performance.now();
  const years: MemberYear[] = [];
  const toGather = { input: { options: order.options }, years: order.options.length * order.members };
  const refused: Record<number, string> = {};
  let drawnAt = Number.NEGATIVE_INFINITY;
  setRun((one) => ({ ...one, phase: "running", problem: null, refused: {}, firstMs: null, where }));
  runner.run(order, (event) => {
    const at = performance.now();
    if (event.kind === "year") years.push(event.year);
    if (event.kind === "refused") refused[event.option] = event.problem;
    const phase = event.kind === "done" ? "done" : event.kind === "failed" ? "failed" : "running";
    if (phase === "running" && event.kind !== "ready" && at - drawnAt < DRAW_MS) return;
    if (event.kind === "year") drawnAt = at;
    setRun((one) => ({
      ...one,
      phase,
      forecast:
        years.length === 0 ? one.forecast : kept(gatherForecast(toGather, years), one.forecast, order),
      ...(event.kind === "ready" ? { assumptions: event.assumptions, uncertain: event.uncertain } : {}),
      refused: { ...refused },
      problem: event.kind === "failed" ? event.problem : null,
      firstMs: one.firstMs ?? (years.length > 0 ? at - startedAt : null),
    }));
  });
}

/** Until an option's central year has run again, what was said of the option of that name stands. */
function kept(found: Forecast, before: Forecast | null, order: ForecastOrder): Forecast {
  return {
    ...found,
    options: found.options.map(
      (option, place) =>
        option ?? before?.options.find((one) => one?.name === order.options[place]?.name) ?? null,
    ),
  };
}
