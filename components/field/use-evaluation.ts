import { useDeferredValue, useEffect, useMemo, useState } from "react";
import type { Evaluation, JobContext } from "@/lib/domain/evaluate";

export type Engine = typeof import("@/lib/domain/evaluate/for-phone");

let loading: Promise<Engine> | null = null;
/** The engineering comes after the screens: it is as large as all of them, and a reading can be typed without it. */
function loadEngine(): Promise<Engine> {
  loading ??= import("@/lib/domain/evaluate/for-phone");
  loading.catch(() => {
    loading = null;
  });
  return loading;
}

/** The engineering, once it is here. */
export function useEngine(): Engine | null {
  const [engine, setEngine] = useState<Engine | null>(null);
  useEffect(() => {
    loadEngine().then(setEngine, () => undefined);
  }, []);
  return engine;
}

/** What follows from the job as it stands on this phone; `null` until the engineering has been loaded. */
export function useEvaluation(context: JobContext): Evaluation | null {
  const engine = useEngine();
  const settled = useDeferredValue(context);
  return useMemo(() => engine?.evaluateJob(settled) ?? null, [engine, settled]);
}
