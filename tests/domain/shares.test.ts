import { describe, expect, test } from "vitest";
import { chanceOfAsMany, shareDifference, wilson95 } from "@/lib/domain/shares";

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

const DIFFERENCE_SOURCE = "Newcombe, Statistics in Medicine 17 (1998) 873, table II, method 10, from memory";

describe(`the difference of two shares: ${DIFFERENCE_SOURCE}`, () => {
  test.each([
    [56, 70, 48, 80, 0.0524, 0.3339],
    [9, 10, 3, 10, 0.1705, 0.809],
    [5, 56, 0, 29, -0.0381, 0.1926],
  ])("%d of %d less %d of %d: %f to %f", (hits, jobs, otherHits, otherJobs, low, high) => {
    const found = shareDifference([hits, jobs], [otherHits, otherJobs]);
    // The table prints four decimals.
    expect(Math.abs(found.low - low)).toBeLessThanOrEqual(0.00005);
    expect(Math.abs(found.high - high)).toBeLessThanOrEqual(0.00005);
  });

  test("the other way round it is the mirrored interval", () => {
    const [one, other] = [shareDifference([4, 9], [2, 30]), shareDifference([2, 30], [4, 9])];
    expect(other.low).toBeCloseTo(-one.high, 12);
    expect(other.high).toBeCloseTo(-one.low, 12);
  });
});

// The lady tasting tea: 1 in 70 for all four, 17 in 70 for three or four (Fisher 1935, from memory; 70 = 8 choose 4).
test.each([
  [4, 4, 0, 4, 1 / 70],
  [3, 4, 1, 4, 17 / 70],
  [0, 4, 4, 4, 1],
  [3, 3, 0, 3, 1 / 20],
])("%d of %d against %d of %d by chance: %f", (hits, jobs, otherHits, otherJobs, chance) => {
  expect(chanceOfAsMany([hits, jobs], [otherHits, otherJobs])).toBeCloseTo(chance, 9);
});

test("a hundred thousand jobs are counted as well", () => {
  const chance = chanceOfAsMany([2_600, 25_000], [1_500, 75_000]);
  expect(chance).toBeGreaterThanOrEqual(0);
  expect(chance).toBeLessThan(1e-100);
  expect(chanceOfAsMany([1_000, 50_000], [1_000, 50_000])).toBeGreaterThan(0.5);
});

test.each([
  [5, 4],
  [-1, 4],
  [0.5, 4],
])("%d of %d is refused", (hits, jobs) => {
  expect(() => chanceOfAsMany([hits, jobs], [0, 4])).toThrow(RangeError);
});
