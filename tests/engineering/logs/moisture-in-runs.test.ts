import { expect, test } from "vitest";
import type { LogSeries } from "@/lib/engineering/logs/log-series";
import { moistureInRuns } from "@/lib/engineering/logs/moisture-in-runs";
import type { Run } from "@/lib/engineering/logs/runs";

const SOURCE = "a straight line read by hand (computed)";

const series = (indoorHumidityRatio: Float64Array | null): LogSeries =>
  ({ indoorHumidityRatio, intervalMin: 5, hoursEach: 5 / 60 }) as unknown as LogSeries;
/** Falls by 0.0001 lb/lb every 5 min: 0.0012 · 7,000 = 8.4 gr/lb an hour. */
const falling = Float64Array.from({ length: 40 }, (_, index) => 0.012 - 0.0001 * index);
const run = (change: Partial<Run>): Run =>
  ({ minutes: 30, lastIndex: 20, startKnown: true, endKnown: true, ...change }) as Run;

test(`moisture through long runs: ${SOURCE}`, () => {
  const found = moistureInRuns(series(falling), [run({}), run({ minutes: 45, lastIndex: 35 })]);
  expect(found?.runs).toBe(2);
  expect(found?.meanGrainsPerLbPerH).toBeCloseTo(-8.4, 9);
});

test("short runs, and runs that began before the log or did not end in it, do not count", () => {
  const others = [run({ minutes: 19 }), run({ startKnown: false }), run({ endKnown: false })];
  expect(moistureInRuns(series(falling), others)).toBeNull();
  expect(moistureInRuns(series(falling), [...others, run({ minutes: 20 })])?.runs).toBe(1);
  expect(moistureInRuns(series(null), [run({})])).toBeNull();
});
