import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { infiltrationCreditCfm, ventilationNeedCfm } from "@/lib/engineering/load";

const NEED_SOURCE = "ANSI/ASHRAE 62.2-2013 on, 0.03·area + 7.5·(bedrooms + 1) [F, C]";
const CREDIT_SOURCE = "ANSI/ASHRAE 62.2, 0.052·wsf·S·Q50, S = (H/8.2)^0.4 [F]";

describe(`ventilation need: ${NEED_SOURCE}`, () => {
  test.each([
    [2_000, 3, 90],
    [2_400, 4, 109.5],
  ])("%d ft², %d bedrooms: %d cfm", (floorAreaFt2, bedrooms, expected) => {
    expect(ventilationNeedCfm({ floorAreaFt2, bedrooms })).toBeCloseTo(expected, 9);
  });

  test("refuses by name", () => {
    expect(() => ventilationNeedCfm({ floorAreaFt2: 50, bedrooms: 3 })).toThrow(/floorAreaFt2/);
    expect(() => ventilationNeedCfm({ floorAreaFt2: 2_000, bedrooms: -1 })).toThrow(/bedrooms/);
  });
});

describe(`leakage credit: ${CREDIT_SOURCE}`, () => {
  test.each([
    ["one storey", 8.2, 26.0],
    // 2^0.4 = 1.3195.
    ["two storeys", 16.4, 34.3],
  ])("Q50 1,000, wsf 0.5, %s: %d ft, %d cfm", (_name, houseHeightFt, expected) => {
    const credit = infiltrationCreditCfm({ leakageCfm50: 1_000, windShieldingFactor: 0.5, houseHeightFt });
    // Half a printed digit.
    expect(Math.abs(credit - expected)).toBeLessThan(0.05);
  });

  test("in proportion to the leakage, more in a taller house", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 10_000, noNaN: true }),
        fc.double({ min: 6, max: 50, noNaN: true }),
        (q, h) => {
          const house = { leakageCfm50: q, windShieldingFactor: 0.6, houseHeightFt: h };
          const credit = infiltrationCreditCfm(house);
          expect(infiltrationCreditCfm({ ...house, leakageCfm50: 2 * q }) / credit).toBeCloseTo(2, 9);
          expect(infiltrationCreditCfm({ ...house, houseHeightFt: h + 1 })).toBeGreaterThan(credit);
        },
      ),
      { seed: 81 },
    );
  });
});
