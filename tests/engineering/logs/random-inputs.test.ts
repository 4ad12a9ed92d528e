import fc from "fast-check";
import { expect } from "vitest";
import { seedLimits } from "@/lib/engineering/limit-definition";
import type { LogContext, LogSamples } from "@/lib/engineering/logs";
import * as logs from "@/lib/engineering/logs";
import {
  everyFunctionTried,
  lawful,
  RANDOM_RUNS as RUNS,
  randomTest,
  runs,
  tried,
} from "../../support/random-inputs";

const {
  analyzeLog,
  besideLog,
  dayOverlay,
  LOG_CHANNELS,
  LOG_RANGES,
  likelyCauses,
  logFindings,
  logMoisture,
  logPictures,
  logsLimits,
  mergeSamples,
  tradePicture,
  whyDryIsUntold,
} = tried(logs, ["besideLog", "logMoisture", "mergeSamples"]);

const WILD = [Number.NaN, Infinity, -Infinity, -1, 0, 1e12, -1e300];

const number = (min: number, max: number) =>
  fc.oneof(
    { weight: 80, arbitrary: fc.double({ min, max, noNaN: true }) },
    { weight: 1, arbitrary: fc.constantFrom(...WILD) },
  );

/** Readings in range, gaps and, in one log of ten, anything at all. */
const values = (min: number, max: number, length: number, wild: boolean) =>
  fc.array(
    fc.oneof(
      { weight: 8, arbitrary: fc.double({ min, max, noNaN: true }) },
      { weight: 2, arbitrary: fc.constantFrom(min, max) },
      { weight: 1, arbitrary: fc.constant(Number.NaN) },
      ...(wild ? [{ weight: 1, arbitrary: fc.constantFrom(...WILD) }] : []),
    ),
    { minLength: length, maxLength: length },
  );

const samples: fc.Arbitrary<LogSamples> = fc
  .tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 9 }), fc.constantFrom(1, 5, 10, 60))
  .chain(([length, tenth, intervalMin]) =>
    fc
      .record({
        steps: fc.array(fc.constantFrom(1, 1, 1, 1, 3, tenth === 0 ? 0 : 1), {
          minLength: length,
          maxLength: length,
        }),
        offset: fc.constantFrom(0, -300, 330),
        channels: fc.record(
          Object.fromEntries(
            LOG_CHANNELS.map((channel) => {
              const [min, max] = LOG_RANGES[channel];
              return [channel, values(min, max, length, tenth === 1)];
            }),
          ),
          { requiredKeys: [] },
        ),
      })
      .map(({ steps, offset, channels }) => {
        let at = Date.UTC(2024, 6, 1);
        return {
          timeMs: Float64Array.from(steps, (step) => {
            at += step * intervalMin * 60_000;
            return at;
          }),
          utcOffsetMin: new Int16Array(length).fill(offset),
          intervalMin,
          channels: Object.fromEntries(
            Object.entries(channels).map(([channel, column]) => [channel, Float64Array.from(column ?? [])]),
          ),
        };
      }),
  );

const context: fc.Arbitrary<LogContext> = fc.record({
  humidityLimitPct: number(30, 70),
  elevationFt: number(0, 8_000),
  deliveredSensibleBtuhByStage: fc.option(fc.array(number(10_000, 50_000), { minLength: 1, maxLength: 2 }), {
    nil: null,
  }),
  design: fc.option(fc.record({ outdoorF: number(80, 110), sensibleBtuh: number(10_000, 60_000) }), {
    nil: null,
  }),
});

randomTest("analysis, findings and causes: finite numbers, shares from 0 to 1, or a typed refusal", () => {
  let results = 0;
  const limits = seedLimits(logsLimits);
  fc.assert(
    fc.property(samples, context, (log, job) => {
      const analysis = lawful(() => analyzeLog(log, job));
      if (analysis === null) return;
      const { humidity, running } = analysis;
      for (const share of [
        humidity?.dryShare,
        humidity?.share50To60,
        running?.duty,
        running?.secondStageShare,
      ]) {
        if (share !== undefined && share !== null) {
          expect(share).toBeGreaterThanOrEqual(0);
          expect(share).toBeLessThanOrEqual(1 + 1e-9);
        }
      }
      if (humidity !== null) {
        const grouped = humidity.byHourOfDay.reduce((sum, { hours }) => sum + hours, 0);
        expect(grouped).toBeCloseTo(humidity.hours, 6);
      }
      if (running?.runs)
        expect(running.runs.longestMin).toBeLessThanOrEqual(running.coolingHours * 60 + 1e-6);
      logFindings(analysis, limits);
      likelyCauses(analysis, limits);
      whyDryIsUntold(analysis, limits, true);
      tradePicture(analysis);
      results++;
    }),
    runs(91, 1 / 2, 1.6),
  );
  expect(results).toBeGreaterThan(RUNS / 8);
});

randomTest("pictures and two logs together: nothing doubled, nothing lost, or a typed refusal", () => {
  fc.assert(
    fc.property(samples, samples, number(0, 8_000), (one, other, elevationFt) => {
      lawful(() => logPictures(one, elevationFt));
      lawful(() => logMoisture(one, elevationFt));
      const [fromMs, toMs] = [one.timeMs[0] ?? 0, other.timeMs[0] ?? 0];
      const overlay = lawful(() => dayOverlay(one, elevationFt, "indoorRhPct", { fromMs, toMs }));
      for (const [step, middle] of (overlay?.median ?? []).entries()) {
        if (middle === null) continue;
        expect(overlay?.low[step]).toBeLessThanOrEqual(middle);
        expect(overlay?.high[step]).toBeGreaterThanOrEqual(middle);
      }
      const merged = lawful(() => mergeSamples(one, other));
      if (merged !== null) {
        const instants = new Set([...one.timeMs, ...other.timeMs]);
        expect(new Set(merged.samples.timeMs)).toEqual(instants);
      }
      const beside = lawful(() => besideLog(one, other, { secondIndoorF: "indoorF" }, 60));
      if (beside !== null) expect(beside.timeMs).toEqual(one.timeMs);
    }),
    runs(92, 1 / 2, 1.6),
  );
});

everyFunctionTried("logs", logs);
