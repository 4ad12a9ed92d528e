import { describe, expect, it } from "vitest";
import { ImpossibleStateError, OutOfRangeError } from "@/lib/engineering/errors";
import {
  type DehumidifierPoint,
  dehumidifierAt,
  dehumidifierHeatBtuh,
  RATING_CONDITIONS,
} from "@/lib/engineering/moisture";

const SOURCE =
  "rating points 73 °F/60 % (recalled) and 65 °F/60 % (published); made-up maker's data, hand interpolation";
const POINTS: readonly DehumidifierPoint[] = [
  { dryBulbF: 65, relativeHumidityPct: 50, pintsPerDay: 50, powerW: 560 },
  { dryBulbF: 65, relativeHumidityPct: 60, pintsPerDay: 60, powerW: 580 },
  { dryBulbF: 73, relativeHumidityPct: 50, pintsPerDay: 70, powerW: 600 },
  { dryBulbF: 73, relativeHumidityPct: 60, pintsPerDay: 90, powerW: 620 },
];

describe(`dehumidifier, ${SOURCE}`, () => {
  it("names the conditions ratings are made at", () => {
    expect(RATING_CONDITIONS.wholeHouse).toEqual({ dryBulbF: 73, relativeHumidityPct: 60 });
    expect(RATING_CONDITIONS.portable).toEqual({ dryBulbF: 65, relativeHumidityPct: 60 });
  });

  it("derates to the house's condition by the maker's data", () => {
    const found = dehumidifierAt(POINTS, 69, 55);
    // Mean of four: (50 + 60 + 70 + 90) / 4 = 67.5 pint/day; power 590 W
    expect(found.pintsPerDay).toBeCloseTo(67.5, 9);
    expect(found.powerW).toBeCloseTo(590, 9);
    expect(found.lbPerH).toBeCloseTo((67.5 * 1.0421) / 24, 3);
    expect(dehumidifierAt(POINTS, 73, 60).pintsPerDay).toBe(90);
  });

  it("70 pint/day at 700 W adds 3.04 · 1,054 + 700 · 3.412 Btu/h to the room", () => {
    expect(Math.abs(dehumidifierHeatBtuh(3.04, 700) - 5_592)).toBeLessThan(2); // 3,204 + 2,388
  });

  it("never goes beyond the maker's data", () => {
    expect(() => dehumidifierAt(POINTS, 64, 55)).toThrow(OutOfRangeError);
    expect(() => dehumidifierAt(POINTS, 69, 61)).toThrow(/relativeHumidityPct/);
    expect(() => dehumidifierAt(POINTS.slice(3), 70, 60)).toThrow(/dryBulbF/);
    expect(() => dehumidifierAt([], 70, 60)).toThrow(ImpossibleStateError);
    const twice = [...POINTS, { dryBulbF: 65, relativeHumidityPct: 60, pintsPerDay: 61, powerW: 580 }];
    expect(() => dehumidifierAt(twice, 65, 55)).toThrow(/twice/);
  });
});
