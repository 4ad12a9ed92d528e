import type { LogChannel, LogContext, LogSamples } from "@/lib/engineering/logs";

const START_MS = Date.UTC(2024, 6, 1);

/** A log from plain columns, 5 min apart from 1 July 2024 00:00 UTC; null is a gap. */
export function madeLog(
  channels: { readonly [K in LogChannel]?: readonly (number | null)[] },
  change: Partial<Pick<LogSamples, "timeMs" | "intervalMin" | "utcOffsetMin">> = {},
): LogSamples {
  const columns = Object.entries(channels).map(
    ([channel, values]) => [channel, Float64Array.from(values, (value) => value ?? Number.NaN)] as const,
  );
  const length = columns[0]?.[1].length ?? 0;
  return {
    timeMs: Float64Array.from({ length }, (_, index) => START_MS + index * 300_000),
    utcOffsetMin: new Int16Array(length),
    intervalMin: 5,
    channels: Object.fromEntries(columns),
    ...change,
  };
}

export const context: LogContext = {
  humidityLimitPct: 55,
  elevationFt: 0,
  deliveredSensibleBtuhByStage: null,
  design: null,
};

/** `value` a number of times. */
export const times = <T>(count: number, value: T): T[] => Array.from({ length: count }, () => value);
