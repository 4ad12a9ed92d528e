import { describe, expect, it } from "vitest";
import {
  gallonsPerHour,
  lbPerHFromGallonsPerHour,
  lbPerHFromPintsPerDay,
  pintsPerDay,
} from "@/lib/engineering/moisture";

const SOURCE = "gallon of 231 in³ and water of 62.37 lb/ft³ (computed)";

describe(`units of water against ${SOURCE}`, () => {
  it("8.5 lb/h ≈ 1.02 gal/h", () => {
    expect(gallonsPerHour(8.5)).toBeCloseTo(1.02, 2);
    expect(gallonsPerHour(8.5)).toBeCloseTo(8.5 / ((231 / 1_728) * 62.37), 3);
  });

  it("70 pint/day = 3.04 lb/h", () => {
    expect(lbPerHFromPintsPerDay(70)).toBeCloseTo(3.04, 2);
  });

  it("goes there and back", () => {
    for (const value of [-3, 0, 0.5, 7.5, 100]) {
      expect(lbPerHFromPintsPerDay(pintsPerDay(value))).toBeCloseTo(value, 12);
      expect(lbPerHFromGallonsPerHour(gallonsPerHour(value))).toBeCloseTo(value, 12);
    }
  });
});
