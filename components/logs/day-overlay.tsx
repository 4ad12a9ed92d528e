"use client";

import { useCallback, useEffect, useId, useState } from "react";
import { Button } from "@/components/ui/button";
import { dayOverlayChart, dayText } from "@/lib/charts/day-overlay-chart";
import type { DayOverlay as Overlay, OverlayChannel } from "@/lib/engineering/logs";
import { ChartFigure } from "../charts/chart-figure";

const CHANNELS: readonly { readonly key: OverlayChannel; readonly name: string; readonly unit: string }[] = [
  { key: "indoorRhPct", name: "Indoor humidity", unit: "%" },
  { key: "indoorDewPointF", name: "Indoor dew point", unit: "°F" },
  { key: "indoorF", name: "Indoor temperature", unit: "°F" },
];

type Props = {
  readonly jobId: string;
  readonly importId: string;
  readonly fromMs: number;
  readonly toMs: number;
  readonly limitPct: number | null;
};

/** The days that are shown upon each other by the house's clock, any one of them picked out. */
export function DayOverlay({ jobId, importId, fromMs, toMs, limitPct }: Props) {
  const id = useId();
  const [channel, setChannel] = useState<OverlayChannel>("indoorRhPct");
  const [overlay, setOverlay] = useState<Overlay | null>(null);
  const [state, setState] = useState<"busy" | "idle" | "failed">("busy");
  const [chosen, setChosen] = useState<number | null>(null);

  const span = `fromMs=${Math.round(fromMs)}&toMs=${Math.round(toMs)}`;
  const address = `/api/jobs/${jobId}/logs/${importId}/days?channel=${channel}&${span}`;
  const read = useCallback(
    async (signal?: AbortSignal) => {
      setState("busy");
      try {
        const answer = await fetch(address, signal ? { signal } : {});
        if (!answer.ok) throw new Error("refused");
        setOverlay(await answer.json());
        setState("idle");
      } catch {
        if (!signal?.aborted) setState("failed");
      }
    },
    [address],
  );
  useEffect(() => {
    const asked = new AbortController();
    void read(asked.signal);
    return () => asked.abort();
  }, [read]);

  const what = CHANNELS.find(({ key }) => key === channel) ?? CHANNELS[0];
  const days = overlay?.days.map(({ localDay }) => localDay) ?? [];
  const at = chosen === null ? -1 : days.indexOf(chosen);
  const step = (by: number) => setChosen(days[at === -1 ? (by > 0 ? 0 : days.length - 1) : at + by] ?? null);
  return (
    <section aria-label="Days upon each other" className="mt-3 grid gap-2">
      <div className="no-print flex flex-wrap items-end gap-2">
        <label className="grid gap-1 text-sm" htmlFor={`${id}-what`}>
          Laid upon each other
          <select
            id={`${id}-what`}
            className="control"
            value={channel}
            onChange={(event) =>
              setChannel(CHANNELS.find(({ key }) => key === event.target.value)?.key ?? "indoorRhPct")
            }
          >
            {CHANNELS.map(({ key, name }) => (
              <option key={key} value={key}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <label className="grid gap-1 text-sm" htmlFor={`${id}-day`}>
          Day picked out
          <select
            id={`${id}-day`}
            className="control"
            value={at === -1 ? "" : String(chosen)}
            onChange={(event) => setChosen(event.target.value === "" ? null : Number(event.target.value))}
          >
            <option value="">none</option>
            {days.map((day) => (
              <option key={day} value={day}>
                {dayText(day)}
              </option>
            ))}
          </select>
        </label>
        <Button disabled={days.length === 0 || at === 0} onClick={() => step(-1)}>
          Day before
        </Button>
        <Button disabled={days.length === 0 || at === days.length - 1} onClick={() => step(1)}>
          Day after
        </Button>
        <span role="status" className="text-sm text-muted">
          {state === "busy" ? "Reading…" : state === "failed" ? "Could not be read." : ""}
        </span>
        {state === "failed" ? <Button onClick={() => void read()}>Try again</Button> : null}
      </div>
      {overlay === null || what === undefined ? null : (
        <ChartFigure
          title="Days upon each other"
          geometryAt={(width) =>
            dayOverlayChart({
              ...overlay,
              width,
              name: what.name,
              unit: what.unit,
              chosen,
              limit: channel === "indoorRhPct" ? limitPct : null,
            })
          }
          empty="Nothing of this was read in the days shown."
          note="All days shown above by the hour of the house’s clock. Thin: each day, up to 62 of them. Dashed: the limit promised."
        />
      )}
    </section>
  );
}
