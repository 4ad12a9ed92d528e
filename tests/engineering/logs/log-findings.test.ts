import { describe, expect, it } from "vitest";
import { OutOfRangeError } from "@/lib/engineering/errors";
import { seedLimits } from "@/lib/engineering/limit-definition";
import { analyzeLog, type LogContext, logFindings, logsLimits, logsRules } from "@/lib/engineering/logs";
import { context, madeLog, times } from "./made-log";

const SOURCE =
  "common practice, no source [P]: the seeds of the company limits, on made logs counted by hand";
const limits = seedLimits(logsLimits);
const WEEK = 7 * 288;

const oneOf = (
  ruleId: string,
  channels: Parameters<typeof madeLog>[0],
  change: Partial<LogContext> = {},
  set: Partial<typeof limits> = {},
) => {
  const found = logFindings(analyzeLog(madeLog(channels), { ...context, ...change }), { ...limits, ...set });
  const one = found.find((each) => each.ruleId === ruleId);
  if (one === undefined) throw new Error(`no finding ${ruleId}`);
  return one;
};

/** `on` and `off` intervals of 5 min in turn for a week. */
const cycling = (on: number, off: number) =>
  Array.from({ length: WEEK }, (_, index) => (index % (on + off) < off ? 0 : 1));
/** Humidity that moves, so that the sensor is not stuck; `wet` of every 100 samples lie above 55 %. */
const humidity = (wet: number, length = WEEK) =>
  Array.from({ length }, (_, index) => (index % 100 < wet ? 57 : 50 + (index % 3)));

describe(`verdicts: ${SOURCE}`, () => {
  it.each<[string, string, Parameters<typeof madeLog>[0]]>([
    ["logs.dry-hours", "meets", { indoorRhPct: humidity(4) }],
    ["logs.dry-hours", "falls short", { indoorRhPct: humidity(6) }],
    ["logs.dry-hours", "can't tell", { indoorRhPct: humidity(6, 500) }],
    ["logs.wet-spell", "meets", { indoorRhPct: [...times(288, 57), ...humidity(0, WEEK - 288)] }],
    ["logs.wet-spell", "falls short", { indoorRhPct: [...times(289, 57), ...humidity(0, WEEK - 289)] }],
    ["logs.short-runs", "meets", { firstStageShare: cycling(3, 3) }],
    ["logs.short-runs", "falls short", { firstStageShare: cycling(1, 3) }],
    ["logs.cycles", "meets", { firstStageShare: cycling(3, 3) }],
    ["logs.cycles", "falls short", { firstStageShare: cycling(1, 1) }],
    ["logs.minimum-rest", "meets", { firstStageShare: cycling(3, 1) }],
    [
      "logs.minimum-rest",
      "falls short",
      { firstStageShare: Array.from({ length: WEEK }, (_, index) => (index % 10 === 0 ? 0.6 : 1)) },
    ],
    [
      "logs.second-stage-share",
      "meets",
      { firstStageShare: cycling(4, 4), secondStageShare: cycling(4, 4).map((on) => on * 0.4) },
    ],
    [
      "logs.second-stage-share",
      "falls short",
      { firstStageShare: cycling(4, 4), secondStageShare: cycling(4, 4).map((on) => on * 0.6) },
    ],
    ["logs.fan-without-cooling", "meets", { firstStageShare: cycling(3, 3), fanShare: cycling(3, 3) }],
    ["logs.fan-without-cooling", "falls short", { firstStageShare: cycling(3, 3), fanShare: times(WEEK, 1) }],
    ["logs.still-sensor", "meets", { indoorRhPct: [...times(287, 50), 51] }],
    ["logs.still-sensor", "falls short", { indoorRhPct: times(288, 50) }],
    ["logs.sensors-apart", "meets", { indoorF: [70, 71], secondIndoorF: [72, 73] }],
    ["logs.sensors-apart", "falls short", { indoorF: [70, 71], secondIndoorF: [72.2, 73.2] }],
    ["logs.sensors-apart", "falls short", { indoorRhPct: [50, 51], secondIndoorRhPct: [44, 45] }],
  ])("%s: %s", (ruleId, verdict, channels) => {
    const one = oneOf(ruleId, channels);
    expect(one.verdict).toBe(verdict);
    expect(one.nextStep === null).toBe(verdict === "meets");
  });

  it("the sentence carries the numbers: 94 of every 100 in 2,016 samples", () => {
    // 20 whole hundreds have 1,880 dry samples, the last 16 have 10: 1,890 of 2,016 = 157.5 of 168 h, 93.75 %.
    expect(oneOf("logs.dry-hours", { indoorRhPct: humidity(6) }).statement).toMatch(
      /^15[78] of 168 hours \(94 %\) were at or below 55 % humidity; 95 % is the aim\.$/,
    );
  });

  it("a humid house comes with the word on mould", () => {
    expect(oneOf("logs.dry-hours", { indoorRhPct: humidity(6) }).caution).toContain("surfaces");
  });
});

describe("the measured load", () => {
  const temperatures = [72, 75, 78, 80, 82, 84, 86, 88, 90];
  const house = {
    outdoorF: temperatures.flatMap((outdoorF) => times(288, outdoorF)),
    firstStageShare: temperatures.flatMap((outdoorF) => times(288, (600 * (outdoorF - 68)) / 24_000)),
  };
  const known = (sensibleBtuh: number) => ({
    deliveredSensibleBtuhByStage: [24_000],
    design: { outdoorF: 95, sensibleBtuh },
  });

  // 600 · (95 − 68) = 16,200 Btu/h; 24,000/16,200 = 1.48.
  it.each<[string, number, Partial<typeof limits>, string]>([
    ["logs.oversize", 16_200, {}, "meets"],
    ["logs.oversize", 16_200, { "logs.oversizeRatioMax": 1.4 }, "falls short"],
    ["logs.load-summary", 18_000, {}, "meets"],
    ["logs.load-summary", 24_000, {}, "falls short"],
    ["logs.load-summary", 12_000, {}, "falls short"],
  ])("%s against %f Btu/h with %j: %s", (ruleId, load, set, verdict) => {
    expect(oneOf(ruleId, house, known(load), set).verdict).toBe(verdict);
  });

  it("a house that runs through on hot days may want any amount more: no shortfall, and it says so", () => {
    const capped = temperatures.flatMap((outdoorF) =>
      times(288, Math.min(12_000, 600 * (outdoorF - 68)) / 12_000),
    );
    const one = oneOf(
      "logs.load-summary",
      { ...house, firstStageShare: capped },
      { ...known(30_000), deliveredSensibleBtuhByStage: [12_000] },
    );
    expect(one.verdict).toBe("can't tell");
    expect(one.statement).toContain("at least");
  });

  it("an interval that reaches over the limit can't tell", () => {
    // Loads of ±15 % about 600 · (T − 68), against a summary 30 % above the middle: the limit of 20 % below it lies within the interval.
    const noisy = temperatures.flatMap((outdoorF, day) =>
      times(288, (600 * (outdoorF - 68) * (day % 2 === 0 ? 0.85 : 1.15)) / 24_000),
    );
    const one = oneOf("logs.load-summary", { ...house, firstStageShare: noisy }, known(16_200 * 1.3));
    expect(one.verdict).toBe("can't tell");
    expect(one.nextStep).toContain("hot days");
  });

  it("a middle inside the limit does not meet it while the interval reaches out: the other side of the same rule", () => {
    const noisy = temperatures.flatMap((outdoorF, day) =>
      times(288, (600 * (outdoorF - 68) * (day % 2 === 0 ? 0.85 : 1.15)) / 24_000),
    );
    const log = { ...house, firstStageShare: noisy };
    // The interval of the middle 16,200 Btu/h reaches over 20 % either way, whatever stands in the middle.
    const same = oneOf("logs.load-summary", log, known(16_200 * 1.1));
    expect(same.verdict).toBe("can't tell");
    // 24,000 over the middle is about 1.5: a limit just above it is met by the middle, not by the interval's low end.
    const ratio = oneOf("logs.oversize", log, known(16_200)).figures[0]?.value ?? Number.NaN;
    const just = { "logs.oversizeRatioMax": ratio + 0.01 };
    expect(oneOf("logs.oversize", log, known(16_200), just).verdict).toBe("can't tell");
  });

  it("is not measured without startup's capacity", () => {
    expect(oneOf("logs.oversize", house).verdict).toBe("not measured");
  });
});

it("a log of outdoor temperature alone measures nothing, and says what is missing", () => {
  const found = logFindings(analyzeLog(madeLog({ outdoorF: [80, 81] }), context), limits);
  for (const one of found.filter(({ ruleId }) => ruleId !== logsRules.stillSensor.id)) {
    expect(one.verdict).toBe("not measured");
    expect(one.inputs.length).toBeGreaterThan(0);
  }
});

it("every seed lies in its own range; a limit outside it is refused by name", () => {
  for (const limit of Object.values(logsLimits)) {
    expect(limit.seed).toBeGreaterThanOrEqual(limit.min);
    expect(limit.seed).toBeLessThanOrEqual(limit.max);
  }
  const analysis = analyzeLog(madeLog({ outdoorF: [80] }), context);
  expect(() => logFindings(analysis, { ...limits, "logs.wetSpellMaxH": Number.NaN })).toThrow(
    OutOfRangeError,
  );
});
