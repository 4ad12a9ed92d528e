import { describe, expect, it } from "vitest";
import { moistAir } from "@/lib/engineering/air";
import { bufferedMoistureLb, bufferTimeConstant } from "@/lib/engineering/moisture";

const SOURCE = "first-order water balance (physics)";
const at = (relativeHumidityPct: number) =>
  moistAir({ dryBulbF: 75, relativeHumidityPct, pressurePsia: 14.696 });

describe(`buffer against ${SOURCE}`, () => {
  it("16,000 ft³ from 50 to 60 % at 75 °F: air alone about 2.2 lb, times the multiple", () => {
    // 16,000 / 13.68 = 1,170 lb of dry air; W 0.0093 → 0.0111: ΔW 0.00186
    const alone = bufferedMoistureLb({ volumeFt3: 16_000, capacitanceMultiple: 1, from: at(50), to: at(60) });
    expect(Math.abs(alone - 1_170 * 0.00186)).toBeLessThan(0.04);
    const furnished = bufferedMoistureLb({
      volumeFt3: 16_000,
      capacitanceMultiple: 15,
      from: at(50),
      to: at(60),
    });
    expect(furnished / alone).toBeCloseTo(15, 9);
  });

  it("gives back what it took", () => {
    const input = { volumeFt3: 16_000, capacitanceMultiple: 1 };
    const up = bufferedMoistureLb({ ...input, from: at(50), to: at(50.5) });
    const down = bufferedMoistureLb({ ...input, from: at(50.5), to: at(50) });
    expect(up + down).toBeCloseTo(0, 4); // the two start states differ by 0.01 % in volume
    expect(down).toBeLessThan(0);
  });

  it("time constant: 15 · 16,000 ft³ / 100 cfm = 2,400 min", () => {
    expect(
      bufferTimeConstant({ volumeFt3: 16_000, capacitanceMultiple: 15, airExchangeCfm: 100 }),
    ).toBeCloseTo(2_400, 9);
  });
});
