import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type PerformancePoint, performanceAt } from "@/lib/engineering/equipment";
import { ImpossibleStateError, OutOfRangeError } from "@/lib/engineering/errors";

const SOURCE = "arithmetic: 95 °F: 63 → 33,000, 67 → 35,600; 105 °F: 31,200, 33,800 (computed)";

function line(
  outdoorDbF: number,
  enteringWbF: number,
  totalBtuh: number,
  more: Partial<PerformancePoint> = {},
): PerformancePoint {
  return {
    outdoorDbF,
    enteringWbF,
    enteringDbF: 75,
    airflowCfm: 1_200,
    totalBtuh,
    sensibleBtuh: totalBtuh * 0.75,
    powerW: 2_500,
    ...more,
  };
}

const TABLE = [line(95, 63, 33_000), line(95, 67, 35_600), line(105, 63, 31_200), line(105, 67, 33_800)];
const AT = { enteringDbF: 75, airflowCfm: 1_200 };

describe(`performanceAt against ${SOURCE}`, () => {
  it("interpolates 99 °F / 65 °F to 33,580 Btu/h", () => {
    const found = performanceAt(TABLE, { outdoorDbF: 99, enteringWbF: 65, ...AT });
    // 0.6 · (33,000 + 35,600)/2 + 0.4 · (31,200 + 33,800)/2 = 0.6 · 34,300 + 0.4 · 32,500
    expect(found.totalBtuh).toBeCloseTo(33_580, 6);
    expect(found.sensibleBtuh).toBeCloseTo(0.75 * 33_580, 6);
    expect(found.latentBtuh).toBeCloseTo(0.25 * 33_580, 6);
    expect(found.sensibleRatio).toBeCloseTo(0.75, 12);
    expect(found.powerW).toBeCloseTo(2_500, 9);
    expect(found.notVaried).toEqual([]);
    expect(found.pointsUsed.map(({ weight }) => weight)).toEqual([
      expect.closeTo(0.3, 12),
      expect.closeTo(0.3, 12),
      expect.closeTo(0.2, 12),
      expect.closeTo(0.2, 12),
    ]);
  });

  it("gives each published line back exactly", () => {
    for (const point of TABLE) {
      const found = performanceAt(TABLE, point);
      expect(found.totalBtuh).toBe(point.totalBtuh);
      expect(found.pointsUsed).toEqual([{ point, weight: 1 }]);
    }
  });

  it("never goes beyond the table and names the axis", () => {
    const outside = [
      [{ outdoorDbF: 94.9, enteringWbF: 65 }, "outdoorDbF"],
      [{ outdoorDbF: 105.1, enteringWbF: 65 }, "outdoorDbF"],
      [{ outdoorDbF: 99, enteringWbF: 62.9 }, "enteringWbF"],
      [{ outdoorDbF: 99, enteringWbF: 67.1 }, "enteringWbF"],
    ] as const;
    for (const [asked, axis] of outside) {
      let caught: unknown;
      try {
        performanceAt(TABLE, { ...asked, ...AT });
      } catch (error) {
        caught = error;
      }
      expect(caught).toBeInstanceOf(OutOfRangeError);
      expect((caught as OutOfRangeError).quantity).toBe(axis);
    }
  });

  it("reports an axis the whole table does not vary instead of correcting for it", () => {
    const found = performanceAt(TABLE, {
      outdoorDbF: 99,
      enteringWbF: 65,
      enteringDbF: 78,
      airflowCfm: 1_000,
    });
    expect(found.totalBtuh).toBeCloseTo(33_580, 6);
    expect(found.notVaried).toEqual([
      { axis: "enteringDbF", tableValue: 75, askedValue: 78, unit: "°F" },
      { axis: "airflowCfm", tableValue: 1_200, askedValue: 1_000, unit: "cfm" },
    ]);
  });

  it("uses the lines a maker does publish and refuses the ones left out", () => {
    // 67 °F wet bulb is published at 75 and 80 °F dry bulb, 63 °F only at 75 °F.
    const ragged = [...TABLE, line(95, 67, 35_600, { enteringDbF: 80, sensibleBtuh: 30_000 })];
    expect(
      performanceAt(ragged, { outdoorDbF: 95, enteringWbF: 67, ...AT, enteringDbF: 77.5 }).sensibleBtuh,
    ).toBeCloseTo((35_600 * 0.75 + 30_000) / 2, 6);
    expect(() =>
      performanceAt(ragged, { outdoorDbF: 95, enteringWbF: 65, ...AT, enteringDbF: 77.5 }),
    ).toThrow(OutOfRangeError);
  });

  it("has no power when a line used has none", () => {
    const [first, ...rest] = TABLE;
    const table = [{ ...(first as PerformancePoint), powerW: null }, ...rest];
    expect(performanceAt(table, { outdoorDbF: 99, enteringWbF: 65, ...AT }).powerW).toBeNull();
    expect(performanceAt(table, { outdoorDbF: 105, enteringWbF: 65, ...AT }).powerW).toBe(2_500);
  });

  it("refuses contradictions", () => {
    expect(() => performanceAt([], { outdoorDbF: 95, enteringWbF: 65, ...AT })).toThrow(ImpossibleStateError);
    expect(() =>
      performanceAt([...TABLE, line(95, 63, 32_000)], { outdoorDbF: 95, enteringWbF: 63, ...AT }),
    ).toThrow(/2 lines at one condition/);
    expect(() =>
      performanceAt([line(95, 63, 33_000, { sensibleBtuh: 34_000 })], {
        outdoorDbF: 95,
        enteringWbF: 63,
        ...AT,
      }),
    ).toThrow(/sensibleBtuh/);
    expect(() => performanceAt(TABLE, { outdoorDbF: 95, enteringWbF: 76, ...AT })).toThrow(
      ImpossibleStateError,
    );
  });
});

describe("laws", () => {
  const settings = { seed: 20261125, numRuns: 300 };

  it("is exact for a table that is linear in every axis", () => {
    // A multilinear interpolation reproduces any function linear in each axis (here with a cross term).
    const truth = (o: number, w: number, d: number, c: number): number =>
      20_000 - 150 * (o - 95) + 600 * (w - 67) + 20 * (d - 80) + 4 * (c - 1_200) - 2 * (o - 95) * (w - 67);
    const table: PerformancePoint[] = [];
    for (const o of [75, 95, 115])
      for (const w of [59, 63, 67])
        for (const d of [70, 75, 80])
          for (const c of [800, 1_000, 1_200])
            table.push({
              outdoorDbF: o,
              enteringWbF: w,
              enteringDbF: d,
              airflowCfm: c,
              totalBtuh: truth(o, w, d, c),
              sensibleBtuh: truth(o, w, d, c) * 0.7,
              powerW: 1_000 + 10 * o,
            });
    fc.assert(
      fc.property(
        fc.double({ min: 75, max: 115, noNaN: true }),
        fc.double({ min: 59, max: 67, noNaN: true }),
        fc.double({ min: 70, max: 80, noNaN: true }),
        fc.double({ min: 800, max: 1_200, noNaN: true }),
        (o, w, d, c) => {
          const found = performanceAt(table, {
            outdoorDbF: o,
            enteringWbF: w,
            enteringDbF: d,
            airflowCfm: c,
          });
          expect(found.totalBtuh).toBeCloseTo(truth(o, w, d, c), 5);
          expect(found.powerW).toBeCloseTo(1_000 + 10 * o, 6);
          expect(found.sensibleBtuh).toBeLessThanOrEqual(found.totalBtuh);
          expect(found.pointsUsed.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
        },
      ),
      settings,
    );
  });

  it("stays between the lines used, in any order of the table", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 95, max: 105, noNaN: true }),
        fc.double({ min: 63, max: 67, noNaN: true }),
        fc.shuffledSubarray([...TABLE], { minLength: TABLE.length }),
        (outdoorDbF, enteringWbF, shuffled) => {
          const found = performanceAt(shuffled, { outdoorDbF, enteringWbF, ...AT });
          const totals = found.pointsUsed.map(({ point }) => point.totalBtuh);
          expect(found.totalBtuh).toBeGreaterThanOrEqual(Math.min(...totals) - 1e-6);
          expect(found.totalBtuh).toBeLessThanOrEqual(Math.max(...totals) + 1e-6);
          expect(found.totalBtuh).toBe(performanceAt(TABLE, { outdoorDbF, enteringWbF, ...AT }).totalBtuh);
        },
      ),
      settings,
    );
  });
});
