import { linearRegression, sampleCorrelation } from "simple-statistics";
import { expect, it } from "vitest";
import { points } from "@/lib/engineering/logs/least-squares";

const SOURCE = "simple-statistics, a general library, on the same points (computed)";

it(`slope, correlation and spread of 5,000 points: ${SOURCE}`, () => {
  const pairs = Array.from({ length: 5_000 }, (_, index) => {
    const x = 0.008 + 0.004 * Math.sin(index);
    return [x, 0.003 + 0.4 * x + 0.001 * Math.cos(3 * index)] as [number, number];
  });
  const found = points();
  for (const [x, y] of pairs) found.add(x, y);
  const xs = pairs.map(([x]) => x);
  expect(found.count()).toBe(5_000);
  expect(found.line().slope).toBeCloseTo(linearRegression(pairs).m, 10);
  expect(found.line().r).toBeCloseTo(
    sampleCorrelation(
      xs,
      pairs.map(([, y]) => y),
    ),
    10,
  );
  expect(found.line().spread).toBeCloseTo(Math.max(...xs) - Math.min(...xs), 12);
});

it("points of one x have no slope", () => {
  const found = points();
  found.add(1, 2);
  found.add(1, 3);
  expect(found.line()).toMatchObject({ slope: Number.NaN, spread: 0 });
});
