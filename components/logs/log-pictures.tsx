"use client";

import { afterCycleChart } from "@/lib/charts/after-cycle-chart";
import { bars } from "@/lib/charts/bars";
import { hourByMonth } from "@/lib/charts/hour-by-month";
import { loadLineChart } from "@/lib/charts/load-line-chart";
import type { RunLength, StagesOfHour } from "@/lib/engineering/logs";
import { ChartFigure } from "../charts/chart-figure";
import type { LogReviewData } from "./log-data";

/** Lengths in classes a reader knows, min. */
const CLASSES = [5, 10, 15, 20, 30, 45, 60, 90, 120, Number.POSITIVE_INFINITY];

/** How it ran and how it dried, in five pictures. */
export function LogPictureSheets({ view }: { readonly view: LogReviewData }) {
  const { pictures, loadLine, limitPct, runLengths, design } = view;
  if (pictures === null) return null;
  const stages = pictures.stagesByHour;
  const share = (values: readonly (number | null)[]) => values.map((value) => 100 * (value ?? 0));
  return (
    <div className="grid gap-4 xl:grid-cols-2">
      <ChartFigure
        title="Humidity by hour and month"
        geometryAt={(width) => hourByMonth({ width, cells: pictures.hourByMonth, limitPct: limitPct ?? 60 })}
        empty="The log holds no indoor humidity."
      />
      <ChartFigure
        title="How long cooling runs"
        geometryAt={(width) => bars({ width, ...runClasses(runLengths) })}
        empty="The log holds no whole cooling run."
      />
      <ChartFigure
        title="What runs at which hour"
        geometryAt={(width) =>
          bars({
            width,
            unit: "Share of the hour, %",
            columnName: "Hour",
            columns: stages.map(({ hour }) => String(hour)),
            decimals: 0,
            series: [
              { name: "first stage", tone: "a", values: share(stages.map(({ first }) => first)) },
              { name: "second stage", tone: "short", values: share(stages.map(({ second }) => second)) },
              { name: "fan alone", tone: "muted", values: share(stages.map(({ fanAlone }) => fanAlone)) },
            ],
            words: stageWords(stages),
          })
        }
        empty="The log holds no running times, or nothing ran."
      />
      <ChartFigure
        title="Cooling load by the log"
        geometryAt={(width) => (loadLine === null ? null : loadLineChart({ ...loadLine, width, design }))}
        empty="A load line needs running times, outdoor temperature, at least 8 days of cooling over 8 °F, and the capacity from startup or selection."
      />
      <ChartFigure
        title="Moisture after a cycle"
        geometryAt={(width) => afterCycleChart({ width, points: pictures.afterCycle })}
        empty="The log holds no run with a quiet quarter hour and the fan's time after it."
      />
    </div>
  );
}

function runClasses(runLengths: readonly RunLength[]) {
  const counts = CLASSES.map((to, at) => {
    const from = CLASSES[at - 1] ?? 0;
    return runLengths.reduce(
      (sum, { minutes, runs }) => sum + (minutes >= from && minutes < to ? runs : 0),
      0,
    );
  });
  const all = counts.reduce((sum, count) => sum + count, 0);
  const short = counts.slice(0, 2).reduce((sum, count) => sum + count, 0);
  return {
    unit: "Runs",
    columnName: "Minutes",
    columns: CLASSES.map((to, at) => (Number.isFinite(to) ? `<${to}` : `≥${CLASSES[at - 1] ?? 0}`)),
    decimals: 0,
    series: [{ name: "runs", tone: "a" as const, values: counts }],
    words: `${all} whole runs, ${short} of them shorter than 10 min.`,
  };
}

function stageWords(stages: readonly StagesOfHour[]): string {
  const most = (key: "first" | "second" | "fanAlone") =>
    stages.reduce(
      (best, one) => ((one[key] ?? 0) > (best[key] ?? 0) ? one : best),
      stages[0] ?? { hour: 0, first: null, second: null, fanAlone: null },
    );
  const [first, second, fan] = [most("first"), most("second"), most("fanAlone")];
  const said = (name: string, value: number | null, hour: number) =>
    value === null || value === 0
      ? `${name} never`
      : `${name} most at ${hour}:00 (${(100 * value).toFixed(0)} %)`;
  return `${said("First stage", first.first, first.hour)}, ${said("second stage", second.second, second.hour)}, ${said("fan alone", fan.fanAlone, fan.hour)}.`;
}
