import { describe, expect, test } from "vitest";
import {
  airSideCapacity,
  moistAir,
  QUICK_LATENT_FACTOR,
  QUICK_SENSIBLE_FACTOR,
  QUICK_TOTAL_FACTOR,
  quickLatentBtuh,
  quickMoistureLbPerH,
  quickSensibleBtuh,
  quickTotalBtuh,
} from "@/lib/engineering/air";
import { OutOfRangeError } from "@/lib/engineering/errors";

const SOURCE = "60·0.075·0.24, 60·0.075 and 4.5·1061/7000 [C]";

describe(`quick factors: ${SOURCE}`, () => {
  test("are the products they stand for", () => {
    expect(QUICK_SENSIBLE_FACTOR).toBeCloseTo(60 * 0.075 * 0.24, 10);
    expect(QUICK_TOTAL_FACTOR).toBeCloseTo(60 * 0.075, 10);
    // The trade rounds 0.6821 to two places.
    expect(QUICK_LATENT_FACTOR).toBeCloseTo((4.5 * 1_061) / 7_000, 2);
  });

  test("60 cfm over 20 °F is 1,296 Btu/h; over 34 grains 1,387 Btu/h [C]", () => {
    expect(quickSensibleBtuh({ airflowCfm: 60, temperatureDifferenceF: 20, densityRatio: 1 })).toBeCloseTo(
      1_296,
      6,
    );
    expect(
      quickLatentBtuh({ airflowCfm: 60, moistureDifferenceGrainsPerLb: 34, densityRatio: 1 }),
    ).toBeCloseTo(1_387.2, 6);
  });

  test("thin air carries less, in proportion", () => {
    expect(
      quickSensibleBtuh({ airflowCfm: 1_000, temperatureDifferenceF: 20, densityRatio: 0.8 }),
    ).toBeCloseTo(17_280, 6);
    expect(
      quickMoistureLbPerH({ airflowCfm: 1_200, moistureDifferenceGrainsPerLb: 11, densityRatio: 1 }),
    ).toBeCloseTo((4.5 * 1_200 * 11) / 7_000, 9);
    const thin = { airflowCfm: 1_000, densityRatio: 0.8 };
    // 4.5 · 1,000 · 7 · 0.8; 0.68 · 1,000 · 20 · 0.8; 4.5 · 1,000 · 14 ÷ 7,000 · 0.8
    expect(quickTotalBtuh({ ...thin, enthalpyDifferenceBtuPerLb: 7 })).toBeCloseTo(25_200, 6);
    expect(quickLatentBtuh({ ...thin, moistureDifferenceGrainsPerLb: 20 })).toBeCloseTo(10_880, 6);
    expect(quickMoistureLbPerH({ ...thin, moistureDifferenceGrainsPerLb: 14 })).toBeCloseTo(7.2, 9);
  });

  test("stand within 5 % of the exact result on an ordinary cooling coil", () => {
    const entering = moistAir({ dryBulbF: 75, relativeHumidityPct: 50, pressurePsia: 14.696 });
    const leaving = moistAir({ dryBulbF: 55, relativeHumidityPct: 90, pressurePsia: 14.696 });
    const exact = airSideCapacity({ airflowCfm: 1_000, entering, leaving });
    const quick = quickTotalBtuh({
      airflowCfm: 1_000,
      enthalpyDifferenceBtuPerLb: entering.enthalpyBtuPerLb - leaving.enthalpyBtuPerLb,
      densityRatio: 1,
    });
    expect(Math.abs(quick / exact.totalBtuh - 1)).toBeLessThan(0.05);
  });

  test("refuse a density ratio that is no site", () => {
    expect(() =>
      quickSensibleBtuh({ airflowCfm: 60, temperatureDifferenceF: 20, densityRatio: 14.7 }),
    ).toThrow(OutOfRangeError);
  });
});
