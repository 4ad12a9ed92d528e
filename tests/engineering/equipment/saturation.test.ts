import { describe, expect, it } from "vitest";
import { moistAir, waterSaturationPressurePsia } from "@/lib/engineering/air";
import {
  COLDEST_SATURATION_F,
  fastSaturationEnthalpy,
  fastSaturationHumidityRatio,
  fastSaturationPressurePsia,
  saturationEnthalpySlope,
  saturationHumidityRatioSlope,
  WARMEST_SATURATION_F,
} from "@/lib/engineering/equipment/saturation";

const SOURCE = "psychrolib: ASHRAE Handbook, Fundamentals 2017, ch. 1 eq. 5 and 6 (published)";

const temperatures = Array.from(
  { length: 3_001 },
  (_, index) => COLDEST_SATURATION_F + ((WARMEST_SATURATION_F - COLDEST_SATURATION_F) * index) / 3_000,
);

describe(`fast saturation against ${SOURCE}`, () => {
  it("pressure within 5e-7 relative over the whole range", () => {
    const worst = Math.max(
      ...temperatures.map((t) =>
        Math.abs(fastSaturationPressurePsia(t) / waterSaturationPressurePsia(t) - 1),
      ),
    );
    expect(worst).toBeLessThan(5e-7);
  });

  it("enthalpy within 2e-5 Btu/lb up to 90 °F at sea level and 8,000 ft", () => {
    for (const pressurePsia of [14.696, 10.9]) {
      for (const dryBulbF of temperatures.filter((t) => t <= 90)) {
        const exact = moistAir({ dryBulbF, pressurePsia, relativeHumidityPct: 100 });
        expect(
          Math.abs(fastSaturationEnthalpy(dryBulbF, pressurePsia) - exact.enthalpyBtuPerLb),
        ).toBeLessThan(2e-5);
        expect(fastSaturationHumidityRatio(dryBulbF, pressurePsia) / exact.humidityRatio).toBeCloseTo(1, 6);
      }
    }
  });

  it("ASHRAE table 3: 41 °F 0.12656, 77 °F 0.45973, 122 °F 1.79140 psia within 300 ppm (published)", () => {
    for (const [tempF, psia] of [
      [41, 0.12656],
      [77, 0.45973],
      [122, 1.7914],
    ] as const) {
      expect(Math.abs(fastSaturationPressurePsia(tempF) / psia - 1)).toBeLessThan(3e-4);
    }
  });

  it("slopes agree with central differences of the functions themselves", () => {
    const step = 1e-3;
    for (const t of [-5, 10, 25, 33, 45, 55, 70, 90, 120]) {
      const difference = (f: (x: number) => number): number => (f(t + step) - f(t - step)) / (2 * step);
      const w = difference((x) => fastSaturationHumidityRatio(x, 14.696));
      const h = difference((x) => fastSaturationEnthalpy(x, 14.696));
      expect(saturationHumidityRatioSlope(t, 14.696) / w).toBeCloseTo(1, 6);
      expect(saturationEnthalpySlope(t, 14.696) / h).toBeCloseTo(1, 6);
    }
  });
});
