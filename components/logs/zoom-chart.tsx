"use client";

import { type KeyboardEvent, useRef, useState } from "react";
import { Button } from "@/components/ui/button";
import type { Thinned } from "@/lib/charts/decimate";
import { livedChart } from "@/lib/charts/lived-chart";
import { ChartFigure } from "../charts/chart-figure";
import { DayOverlay } from "./day-overlay";
import { SpanForm } from "./span-form";
import { ZoomByDrag } from "./zoom-by-drag";

export type LogWindowData = Thinned & { readonly fromMs: number; readonly toMs: number };

const HOUR_MS = 3_600_000;
/** Closer than this nothing is left to see. */
const LEAST_MS = 6 * HOUR_MS;

/** The whole log, to look into: zoomed and moved by dragging, buttons, keys or dates, drawn anew from the readings of the chosen time; below it its days upon each other. */
export function ZoomChart({
  jobId,
  importId,
  whole,
  limitPct,
  timeZone,
}: {
  readonly jobId: string;
  readonly importId: string;
  readonly whole: LogWindowData;
  readonly limitPct: number | null;
  readonly timeZone: string;
}) {
  const [shown, setShown] = useState(whole);
  const [state, setState] = useState<"idle" | "busy" | "failed">("idle");
  const latest = useRef<AbortController | null>(null);

  const show = async (fromMs: number, toMs: number) => {
    const span = Math.min(Math.max(toMs - fromMs, LEAST_MS), whole.toMs - whole.fromMs);
    const from = Math.round(Math.min(Math.max(fromMs, whole.fromMs), whole.toMs - span));
    latest.current?.abort();
    const asked = new AbortController();
    latest.current = asked;
    setState("busy");
    try {
      const query = `fromMs=${from}&toMs=${Math.round(from + span)}`;
      const answer = await fetch(`/api/jobs/${jobId}/logs/${importId}?${query}`, { signal: asked.signal });
      if (!answer.ok) throw new Error("refused");
      setShown(await answer.json());
      setState("idle");
    } catch {
      if (!asked.signal.aborted) setState("failed");
    }
  };
  const span = shown.toMs - shown.fromMs;
  const middle = shown.fromMs + span / 2;
  const zoom = (factor: number) => show(middle - (span * factor) / 2, middle + (span * factor) / 2);
  const move = (share: number) => show(shown.fromMs + share * span, shown.toMs + share * span);
  const actions = new Map([
    ["+", () => zoom(0.5)],
    ["=", () => zoom(0.5)],
    ["-", () => zoom(2)],
    ["ArrowLeft", () => move(-0.5)],
    ["ArrowRight", () => move(0.5)],
    ["0", () => show(whole.fromMs, whole.toMs)],
  ]);
  const onKeyDown = (event: KeyboardEvent) => {
    const act = actions.get(event.key);
    // A list's own arrow keys choose in it.
    if (event.target instanceof HTMLSelectElement) return;
    if (!act || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    act();
  };
  return (
    <section aria-label="Chart of the log" onKeyDown={onKeyDown} className="grid gap-2">
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset would look like a form */}
      <div role="group" aria-label="Zoom" className="no-print flex flex-wrap items-center gap-2">
        <Button onClick={() => zoom(0.5)}>Zoom in (+)</Button>
        <Button onClick={() => zoom(2)}>Zoom out (−)</Button>
        <Button onClick={() => move(-0.5)}>Earlier (←)</Button>
        <Button onClick={() => move(0.5)}>Later (→)</Button>
        <Button onClick={() => show(whole.fromMs, whole.toMs)}>Whole log (0)</Button>
        <span role="status" className="text-sm text-muted">
          {state === "busy" ? "Reading…" : state === "failed" ? "Could not be read; try again." : ""}
        </span>
      </div>
      <SpanForm shown={shown} timeZone={timeZone} onChosen={({ fromMs, toMs }) => show(fromMs, toMs)} />
      <ZoomByDrag onChosen={(from, to) => show(shown.fromMs + from * span, shown.fromMs + to * span)}>
        <ChartFigure
          title="What the house did"
          geometryAt={(width) =>
            livedChart({
              ...shown,
              width,
              timeZone,
              limitPct,
              gapAfterMinutes: Math.max(90, (4 * span) / 60_000 / shown.atMs.length),
            })
          }
          empty="No readings in this time."
          note="Shaded: 50 to 60 %. Dashed: the limit promised. Lines break where readings are missing. Drag across the chart to zoom."
        />
      </ZoomByDrag>
      <DayOverlay
        jobId={jobId}
        importId={importId}
        fromMs={shown.fromMs}
        toMs={shown.toMs}
        limitPct={limitPct}
      />
    </section>
  );
}
