import type { Thinned } from "./decimate";

/** What the chart of a log draws: thinned readings between two instants. */
export type LivedChartInput = Thinned & {
  readonly width: number;
  readonly fromMs: number;
  readonly toMs: number;
  readonly timeZone: string;
  readonly limitPct: number | null;
  /** Longest time between two readings that a line is drawn over, min. */
  readonly gapAfterMinutes: number;
};
