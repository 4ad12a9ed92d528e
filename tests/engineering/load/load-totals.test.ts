import { describe, expect, test } from "vitest";
import { loadTotals } from "@/lib/engineering/load";

const SOURCE = "definitions; 1 ton = 12,000 Btu/h [C]";

describe(`load totals: ${SOURCE}`, () => {
  test("24,000 sensible and 4,000 latent over 2,000 ft²", () => {
    const totals = loadTotals({ sensibleCoolingBtuh: 24_000, latentCoolingBtuh: 4_000, floorAreaFt2: 2_000 });
    expect(totals.totalBtuh).toBe(28_000);
    // 24/28, 28,000/12,000, 2,000/2.3333.
    expect(totals.sensibleRatio).toBeCloseTo(0.857143, 6);
    expect(totals.tons).toBeCloseTo(2.333333, 6);
    expect(totals.floorAreaPerTonFt2).toBeCloseTo(857.142857, 5);
  });

  test("refuses no load and no floor, naming the field", () => {
    const load = { sensibleCoolingBtuh: 24_000, latentCoolingBtuh: 4_000, floorAreaFt2: 2_000 };
    expect(() => loadTotals({ ...load, sensibleCoolingBtuh: 0, latentCoolingBtuh: 0 })).toThrow(
      /sensible and latent/,
    );
    expect(() => loadTotals({ ...load, floorAreaFt2: 0 })).toThrow(/floorAreaFt2/);
    expect(() => loadTotals({ ...load, latentCoolingBtuh: -1 })).toThrow(/latentCoolingBtuh/);
    expect(() => loadTotals({ ...load, latentCoolingBtuh: Number.NaN })).toThrow(/latentCoolingBtuh/);
  });
});
