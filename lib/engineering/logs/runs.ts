import type { LogSeries } from "./log-series";

/** One run of the compressor, put together from the shares of its intervals. */
export type Run = {
  readonly startMs: number;
  readonly endMs: number;
  readonly minutes: number;
  /** Sample in which it ended. */
  readonly lastIndex: number;
  /** False when missing time or an end of the log hides where it began or ended. */
  readonly startKnown: boolean;
  readonly endKnown: boolean;
  /** Runs of one stretch have no missing time between them. */
  readonly stretch: number;
};

/** An interval counts as fully on from here: loggers lose a second or two. */
const FULL = 0.985;
const NOTHING = 0.003;

/**
 * Runs of the compressor from the share of each interval it ran.
 *
 * A partly-on interval beside an on one is taken as the run's end or beginning there; one between two on intervals has the
 * pause in its middle. Two runs inside one interval cannot be told apart, so cycles are a lower bound and the finer the
 * interval the closer.
 */
export function runsOf(series: LogSeries, share: Float64Array): readonly Run[] {
  const runs: Run[] = [];
  const intervalMs = series.intervalMin * 60_000;
  let open: { startMs: number; minutes: number; startKnown: boolean; stretch: number } | null = null;
  let stretch = 0;
  let before = Number.NaN;
  const close = (endMs: number, lastIndex: number, endKnown: boolean) => {
    if (open !== null) runs.push({ ...open, endMs, lastIndex, endKnown });
    open = null;
  };
  for (let index = 0; index < series.length; index++) {
    const startMs = series.timeMs[index] ?? 0;
    if (series.afterGap[index] === 1) {
      close(startMs, index - 1, false);
      stretch++;
      before = Number.NaN;
    }
    const now = share[index] ?? Number.NaN;
    const after = series.afterGap[index + 1] === 0 ? (share[index + 1] ?? Number.NaN) : Number.NaN;
    const onMs = now * intervalMs;
    const minutes = now * series.intervalMin;
    const startKnown = !Number.isNaN(before);
    const endKnown = !Number.isNaN(after);
    if (Number.isNaN(now)) {
      close(startMs, index - 1, false);
      stretch++;
    } else if (now <= NOTHING) {
      close(startMs, index - 1, true);
    } else if (now >= FULL) {
      open ??= { startMs, minutes: 0, startKnown, stretch };
      open.minutes += minutes;
    } else if (open === null && after > NOTHING) {
      open = { startMs: startMs + intervalMs - onMs, minutes, startKnown, stretch };
    } else if (open === null) {
      open = { startMs, minutes, startKnown, stretch };
      close(startMs + onMs, index, endKnown);
    } else if (after >= FULL) {
      // On at both ends, the pause between.
      open.minutes += minutes / 2;
      close(startMs + onMs / 2, index, true);
      open = { startMs: startMs + intervalMs - onMs / 2, minutes: minutes / 2, startKnown: true, stretch };
    } else {
      open.minutes += minutes;
      close(startMs + onMs, index, endKnown);
    }
    before = now;
  }
  close((series.timeMs.at(-1) ?? 0) + intervalMs, series.length - 1, false);
  return runs;
}
