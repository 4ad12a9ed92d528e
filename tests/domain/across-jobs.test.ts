import { describe, expect, test } from "vitest";
import { compared, comparisonInWords, wilson95 } from "@/lib/domain/across-jobs";

const SOURCE =
  "Newcombe, Statistics in Medicine 17 (1998) 857, table I, method 3 (score without continuity correction), from memory; 0 of 20 also by hand: z²/(20 + z²) = 3.8415/23.8415 = 0.1611";

describe(`a share's 95 % interval: ${SOURCE}`, () => {
  test.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])("%d of %d: %f to %f", (hits, jobs, low, high) => {
    const found = wilson95(hits, jobs);
    // The table prints four decimals.
    expect(Math.abs(found.low - low)).toBeLessThanOrEqual(0.00005);
    expect(Math.abs(found.high - high)).toBeLessThanOrEqual(0.00005);
  });

  test("mirrors: what is not a hit has the mirrored interval", () => {
    const [hits, rest] = [wilson95(4, 13), wilson95(9, 13)];
    expect(rest.low).toBeCloseTo(1 - hits.high, 12);
    expect(rest.high).toBeCloseTo(1 - hits.low, 12);
  });

  test.each([
    [1, 0],
    [-1, 5],
    [6, 5],
    [Number.NaN, 5],
    [1.5, 5],
  ])("%d of %d is refused", (hits, jobs) => {
    expect(() => wilson95(hits, jobs)).toThrow(RangeError);
  });
});

const group = (name: string, jobs: number, complaints: number) => ({ value: name, name, jobs, complaints });

test("people are listed by name, and one with nine jobs has no share", () => {
  const groups = compared("techId", [group("Zoe", 9, 9), group("Abe", 10, 0)]);
  expect(groups.map(({ name, share }) => [name, share?.share ?? null])).toEqual([
    ["Abe", 0],
    ["Zoe", null],
  ]);
});

test("settings come in the order of how surely complaints are common: 1 of 1 is less sure than 8 of 10", () => {
  // Lower limits by hand: 1 of 1: 1/(1 + 3.8415) = 0.207; 8 of 10: 0.490 (Wilson).
  const groups = compared("capacitySetting", [group("one", 1, 1), group("ten", 10, 8)]);
  expect(groups.map(({ name }) => name)).toEqual(["ten", "one"]);
});

test("says in words that all complaints share a setting, but not of two complaints and never of people", () => {
  const by = "secondStageAirflowSetting" as const;
  const three = compared(by, [group("tap 4", 4, 3), group("tap 2", 5, 0)]);
  expect(comparisonInWords(by, three)).toContain("All 3 jobs");
  expect(comparisonInWords(by, three)).toContain("tap 4. 1 other jobs have it too; 5 jobs without it");
  const two = compared(by, [group("tap 4", 4, 2), group("tap 2", 5, 0)]);
  expect(comparisonInWords(by, two)).toContain("2 of 9 jobs");
  const people = compared("techId", [group("Zoe", 12, 5), group("Abe", 12, 0)]);
  expect(comparisonInWords("techId", people)).not.toContain("All");
});
