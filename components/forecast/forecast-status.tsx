"use client";

import { Button } from "@/components/ui/button";
import { numberText } from "@/lib/charts/number-text";
import type { OptionsForecast } from "./use-options-forecast";

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
    running: `Running: ${done} of ${years} years.`,
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
