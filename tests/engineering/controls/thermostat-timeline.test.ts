import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type ControlSettings, type HouseAfternoon, thermostatTimeline } from "@/lib/engineering/controls";
import { summarizeTimeline } from "@/lib/engineering/controls/timeline-summary";
import { ImpossibleStateError } from "@/lib/engineering/errors";
import { house, settings } from "./example-input";

const CYCLING_SOURCE =
  "N = 4·Nmax·X(1−X), the thermostat cycling law as in the EnergyPlus Engineering Reference [F]; Nmax = Q/(4·C·d) for one heat capacity C and band d [C]";
const RISE_SOURCE =
  "first-order response T = T∞ + (T0 − T∞)·exp(−t/τ), τ = C/slope [C], arithmetic at each row";

/** No slope: the room rises and falls in straight lines. */
const straight = (loadBtuh: number, capacitance: number, sensibleBtuh: number): HouseAfternoon => ({
  ...house,
  designSensibleBtuh: loadBtuh,
  partLoadSensibleBtuh: loadBtuh,
  capacitanceBtuPerF: capacitance,
  stages: [{ sensibleBtuh, latentBtuh: 5_471.5 }],
  outdoor: { kind: "steady", outdoorF: 90 },
});
const free: ControlSettings = {
  ...settings,
  minimumCompressorRunMin: 0,
  minimumCompressorRestMin: 0,
  stepBackToFirstStage: false,
};

describe(`cycling law: ${CYCLING_SOURCE}`, () => {
  // C 60,000 Btu/°F and d 1 °F with Q 24,000: Nmax = 24,000/(4·60,000·1) = 0.1 per h.
  it.each([
    [0.2, 0.064],
    [0.4, 0.096],
    [0.5, 0.1],
    [0.7, 0.084],
    [0.9, 0.036],
  ])("run fraction %f gives %f cycles an hour", (fraction, cyclesPerHour) => {
    const { summary } = thermostatTimeline({
      house: { ...straight(24_000 * fraction, 60_000, 24_000), durationMin: 10_080 },
      settings: free,
    });
    // Starts and stops fall on whole minutes. Up to a minute late at each end adds 2 + a/b + b/a = 1/(X(1−X)) min
    // (a, b the rates up and down) to a cycle of 150/(X(1−X)) min: at most 1/150 fewer cycles, never more.
    const short = 1 - (summary.cyclesPerHour ?? 0) / cyclesPerHour;
    expect(short).toBeGreaterThanOrEqual(-1e-9);
    expect(short).toBeLessThan(1 / 150);
  });
});

describe(`room temperature: ${RISE_SOURCE}`, () => {
  const idle: ControlSettings = { ...free, firstStageStartOffsetF: 10, secondStageStartOffsetF: 20 };

  it("rises exponentially towards 30 °F above setpoint, τ 8,000/800 = 10 h", () => {
    const { series } = thermostatTimeline({
      house: { ...house, outdoor: { kind: "steady", outdoorF: 95 } },
      settings: idle,
    });
    // 30·(1 − e^−0.1) = 30·(1 − 0.9048374) = 2.854877; 30·(1 − e^−0.2) = 30·(1 − 0.8187308) = 5.438077
    expect(series[60]?.indoorF).toBeCloseTo(77.854877, 5);
    expect(series[120]?.indoorF).toBeCloseTo(80.438077, 5);
  });

  it("rises in a straight line when the load has no slope: 12,000/8,000 = 1.5 °F an hour", () => {
    const { series } = thermostatTimeline({ house: straight(12_000, 8_000, 20_000), settings: idle });
    expect(series[60]?.indoorF).toBeCloseTo(76.5, 9);
    expect(series[100]?.indoorF).toBeCloseTo(77.5, 9);
  });

  it("settles between a stage and the load where slope balances them", () => {
    // 24,000 at 95 °F against 18,000: surplus 6,000 over 800 Btu/h per °F = 7.5 °F above setpoint.
    const { series } = thermostatTimeline({
      house: { ...house, outdoor: { kind: "steady", outdoorF: 95 }, durationMin: 10_080 },
      settings: { ...free, secondStageStartOffsetF: 20 },
    });
    expect(series.at(-1)?.indoorF).toBeCloseTo(82.5, 4);
  });

  it("reads a series in straight lines between its values", () => {
    const { series } = thermostatTimeline({
      house: { ...house, outdoor: { kind: "series", stepMin: 60, valuesF: [80, 92, 86] }, durationMin: 120 },
      settings,
    });
    expect(series[30]?.outdoorF).toBeCloseTo(86, 9);
    expect(series[60]?.outdoorF).toBeCloseTo(92, 9);
    expect(series[90]?.outdoorF).toBeCloseTo(89, 9);
  });
});

describe("what a timeline amounts to, counted by hand", () => {
  it("starts at 1 and 6, runs of 3 and 2 min, a rest of 2 min, one of five cooling minutes in the second stage", () => {
    const stages = [0, 1, 1, 2, 0, 0, 1, 1, 0, 0] as const;
    const rooms = [76, 76.2, 75.8, 75.4, 75, 75.3, 76, 75.6, 74.9, 75.1];
    const series = stages.map((stage, minute) => ({
      minute,
      stage,
      indoorF: rooms[minute] ?? Number.NaN,
      outdoorF: 90,
      fanOn: stage > 0,
      idleFanS: minute === 4 ? 30 : 0,
    }));
    const summary = summarizeTimeline(series, house);
    expect(summary).toMatchObject({
      starts: 2,
      // Five minutes from start to start.
      cyclesPerHour: 12,
      runLengthsMin: [3, 2],
      restLengthsMin: [2],
      meanRunMin: 2.5,
      shortestRunMin: 2,
      shortestRestMin: 2,
      longestRestMin: 2,
      coolingMin: 5,
      secondStageMin: 1,
      secondStageShare: 0.2,
      idleFanMin: 0.5,
      peakIndoorF: 76.2,
      lowestIndoorF: 74.9,
    });
    expect(summary.meanIndoorF).toBeCloseTo(75.53, 9);
    // Latent 6,000 and 8,000 Btu/h over 1,061 + 0.444 · 75 = 1,094.3 Btu/lb: (4 · 5.483 + 7.311) lb/h for a minute each.
    expect(summary.condensedLb).toBeCloseTo((4 * 5.483 + 7.311) / 60, 3);
  });
});

describe("settings, by arithmetic on straight lines: load 12,000, C 6,000 → +1/30 °F a minute; 25,000 → −13/360", () => {
  const line = { ...straight(12_000, 6_000, 25_000), durationMin: 600 };
  const near: ControlSettings = { ...free, firstStageStartOffsetF: 0.99 };

  it("run and rest lengths", () => {
    const { series, summary } = thermostatTimeline({ house: line, settings: near });
    // 0.99·30 = 29.7 → starts at minute 30 with 1.0000; 1.0·360/13 = 27.7 → 28 min, ends at −0.0111;
    // (0.99 + 0.0111)·30 = 30.03 → 31 min of rest, then 1.0222·360/13 = 28.3 → 29 min.
    expect(series.findIndex(({ stage }) => stage === 1)).toBe(30);
    expect(summary.runLengthsMin.slice(0, 2)).toEqual([28, 29]);
    expect(summary.restLengthsMin[0]).toBe(31);
  });

  it("minimum run and minimum rest are kept", () => {
    const held = thermostatTimeline({
      house: line,
      settings: { ...near, minimumCompressorRunMin: 40, minimumCompressorRestMin: 55 },
    }).summary;
    expect(held.shortestRunMin).toBe(40);
    expect(held.shortestRestMin).toBe(55);
  });

  it("cooling past setpoint lengthens the run by its °F over the rate", () => {
    const past = thermostatTimeline({ house: line, settings: { ...near, coolingPastSetpointF: 1 } }).summary;
    // From 1.0 to −1.0 at 13/360 a minute: 55.4 → 56 min.
    expect(past.runLengthsMin[0]).toBe(56);
  });

  it("fan run-on and fan between calls run after the compressor", () => {
    const runOn = thermostatTimeline({ house: line, settings: { ...near, fanRunOnAfterCoolingS: 90 } });
    expect(runOn.series.slice(57, 61).map(({ idleFanS }) => idleFanS)).toEqual([0, 60, 30, 0]);
    const always = thermostatTimeline({ house: line, settings: { ...near, fanBetweenCalls: "on" } });
    expect(always.series.every(({ fanOn }) => fanOn)).toBe(true);
    expect(always.summary.idleFanMin).toBe(600 - always.summary.coolingMin);
  });

  it("minutes per hour counts cooling minutes and runs the rest at the hour's end", () => {
    const idleHouse = { ...line, partLoadSensibleBtuh: 0, designSensibleBtuh: 0, durationMin: 120 };
    const { series } = thermostatTimeline({
      house: idleHouse,
      settings: { ...near, fanBetweenCalls: "minutes per hour", fanBetweenCallsMinPerH: 20 },
    });
    const on = series.filter(({ fanOn }) => fanOn).map(({ minute }) => minute);
    expect(on).toEqual([...range(40, 60), ...range(100, 120)]);
  });

  it("condensed water is latent capacity over the heat of its vapour, 1,061 + 0.444 · 75 = 1,094.3 Btu/lb", () => {
    const { summary } = thermostatTimeline({ house: line, settings: near });
    // 5,471.5 Btu/h ÷ 1,094.3 = 5 lb an hour of running.
    expect(summary.condensedLb).toBeCloseTo((summary.coolingMin / 60) * 5, 9);
  });
});

describe("two stages", () => {
  const hot: HouseAfternoon = { ...house, outdoor: { kind: "steady", outdoorF: 95 } };

  it("the second stage joins at its offset, once the first cannot hold the room", () => {
    const { series } = thermostatTimeline({ house: hot, settings });
    const joined = series.findIndex(({ stage }) => stage === 2);
    expect(series[joined]?.indoorF).toBeGreaterThanOrEqual(77);
    expect(series[joined - 1]?.indoorF).toBeLessThan(77);
    expect(series[joined - 1]?.stage).toBe(1);
  });

  it("step back leaves fewer second-stage minutes than running it to the end", () => {
    const back = thermostatTimeline({ house: hot, settings }).summary;
    const through = thermostatTimeline({
      house: hot,
      settings: { ...settings, stepBackToFirstStage: false },
    }).summary;
    expect(back.secondStageMin).toBeLessThan(through.secondStageMin);
    expect(back.secondStageShare).toBeGreaterThan(0);
  });
});

describe("laws", () => {
  it("energy balances: stored heat is load in minus cooling out", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 40_000, noNaN: true }),
        fc.double({ min: 1_000, max: 60_000, noNaN: true }),
        fc.double({ min: 1_000, max: 40_000, noNaN: true }),
        (load, sensible, capacitance) => {
          const line = straight(load, capacitance, sensible);
          const { series } = thermostatTimeline({ house: line, settings });
          const last = series.at(-1);
          const before = series.slice(0, -1);
          const cooled = before.filter(({ stage }) => stage > 0).length;
          const stored = (before.length * load - cooled * sensible) / 60;
          expect(((last?.indoorF ?? 0) - 75) * capacitance).toBeCloseTo(stored, 2);
        },
      ),
      { seed: 61, numRuns: 200 },
    );
  });

  it("a wider start offset never cycles more often", () => {
    const line = straight(12_000, 6_000, 25_000);
    const cycles = [0.5, 1, 1.5, 2, 3].map(
      (offset) =>
        thermostatTimeline({
          house: { ...line, durationMin: 10_080 },
          settings: { ...free, firstStageStartOffsetF: offset, secondStageStartOffsetF: offset },
        }).summary.cyclesPerHour ?? 0,
    );
    expect(cycles).toEqual([...cycles].sort((a, b) => b - a));
  });
});

describe("refusals", () => {
  it.each([
    ["second stage below the first", {}, { secondStageStartOffsetF: 0.5 }],
    ["minutes missing", {}, { fanBetweenCalls: "minutes per hour" }],
    ["a series too short", { outdoor: { kind: "series", stepMin: 60, valuesF: [80, 90] } }, {}],
    ["an empty series", { outdoor: { kind: "series", stepMin: 60, valuesF: [] } }, {}],
    ["a second stage below the first's capacity", { stages: [...house.stages].reverse() }, {}],
    ["a load that falls with heat", { partLoadSensibleBtuh: 30_000 }, {}],
  ] as const)("%s", (_, houseChange, settingsChange) => {
    const asked = {
      house: { ...house, ...houseChange } as HouseAfternoon,
      settings: { ...settings, ...settingsChange } as ControlSettings,
    };
    expect(() => thermostatTimeline(asked)).toThrow(ImpossibleStateError);
  });
});

const range = (from: number, to: number) => Array.from({ length: to - from }, (_, index) => from + index);
