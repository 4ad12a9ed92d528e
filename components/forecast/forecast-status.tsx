"use client";

import { useEffect, useState } from "react";
import { Button } from "@/components/ui/button";
import { numberText } from "@/lib/charts/number-text";
import { stableText } from "@/lib/engineering/simulation";
import type { ForecastRun } from "./use-forecast";
import type { OptionsForecast } from "./use-options-forecast";

/** Digits of the fingerprint that are shown. */
const SHOWN = 12;

/** How far the forecast is, with its stop and its start. */
export function ForecastStatus({
  forecast: { run, ready, stop, again },
  weatherName,
}: {
  readonly forecast: OptionsForecast;
  readonly weatherName: string;
}) {
  const done = run.forecast?.yearsDone ?? 0;
  const years = run.forecast?.years ?? 0;
  const words = {
    waiting:
      ready.length === 0 ? "No option has all a forecast needs; each says what is missing." : "About to run.",
    running: years === 0 ? "Preparing the house and its weather." : `Running: ${done} of ${years} years.`,
    done: `${done} years run: ${ready.length} ${ready.length === 1 ? "option" : "options"}, each in ten houses and years it may meet.`,
    stopped: `Stopped after ${done} of ${years} years. The ranges are those of the years run.`,
    failed: "Not run.",
  }[run.phase];
  return (
    <div className="flex flex-wrap items-center gap-x-4 gap-y-2 text-sm">
      <p data-testid="forecast-phase" data-phase={run.phase}>
        {words}{" "}
        <span className="text-muted">
          Weather: {weatherName}.
          {run.firstMs === null ? "" : ` First numbers after ${numberText(run.firstMs / 1_000, 2)} s`}
          {run.firstMs === null ? "" : run.where === "browser" ? ", in this browser." : ", on the server."}
        </span>
        <Fingerprint run={run} />
      </p>
      {run.phase === "running" ? (
        <>
          <progress className="h-2 w-40" max={Math.max(years, 1)} value={done} aria-label="Years run" />
          <Button onClick={stop}>Stop</Button>
        </>
      ) : run.phase === "waiting" ? null : (
        <Button onClick={again}>Run again</Button>
      )}
    </div>
  );
}

/**
 * SHA-256 of the whole finished result: the same design, weather and seed give the same one in the same JavaScript engine. Engines round
 * `exp`, `sin` and the like differently in the last digit, so a browser's may not be the server's.
 */
function Fingerprint({ run: { phase, forecast } }: { readonly run: ForecastRun }) {
  const [hash, setHash] = useState<string | null>(null);
  useEffect(() => {
    setHash(null);
    // Only a page from a safe address has the browser's own hashing.
    if (phase !== "done" || forecast === null || globalThis.crypto?.subtle === undefined) return;
    let isOver = false;
    void crypto.subtle.digest("SHA-256", new TextEncoder().encode(stableText(forecast))).then((bytes) => {
      const hex = [...new Uint8Array(bytes)].map((one) => one.toString(16).padStart(2, "0")).join("");
      if (!isOver) setHash(hex);
    });
    return () => {
      isOver = true;
    };
  }, [phase, forecast]);
  return hash === null ? null : (
    <span className="text-muted" title={hash} data-testid="forecast-fingerprint">
      {" "}
      Fingerprint {hash.slice(0, SHOWN)}.
    </span>
  );
}
