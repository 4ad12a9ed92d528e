import { describe, expect, test } from "vitest";
import { ImpossibleStateError, OutOfRangeError } from "@/lib/engineering/errors";
import {
  findMinimumRoomAreaFt2,
  flammableChargeFindings,
  flammableChargeLimits,
  isFlammable,
} from "@/lib/engineering/refrigerant";

const CHARGE_SOURCE = "LFL R-32 0.306, R-454B 0.296 kg/m³ [F]; m1 = 6·LFL, m2 = 52·LFL [C]";
const AREA_SOURCE = "(m/(2.5·LFL^1.25·h0))² m² [M+]: 3.0 kg R-454B at 2.2 m → 6.2 m² [C]";
const LB_PER_KG = 2.20462262;
const FT_PER_M = 3.2808399;

describe(`charge limits: ${CHARGE_SOURCE}`, () => {
  test.each([
    ["R-32", 4.05, 35.1],
    ["R-454B", 3.91, 33.9],
  ] as const)("%s: %d lb without a room limit, %d lb at most", (refrigerant, noRoomLimitLb, largestLb) => {
    const limits = flammableChargeLimits(refrigerant);
    // 6·0.296 kg = 3.9154 lb is printed as 3.91: half a printed digit and that rounding.
    expect(Math.abs(limits.noRoomLimitLb - noRoomLimitLb)).toBeLessThan(0.006);
    expect(Math.abs(limits.largestLb - largestLb)).toBeLessThan(0.05);
  });

  test("the others are not flammable", () => {
    for (const refrigerant of ["R-410A", "R-22", "R-134a"] as const) {
      expect(isFlammable(refrigerant)).toBe(false);
      expect(() => flammableChargeLimits(refrigerant)).toThrow(ImpossibleStateError);
    }
  });
});

describe(`smallest room: ${AREA_SOURCE}`, () => {
  test("3.0 kg of R-454B at 2.2 m needs 6.2 m²", () => {
    const areaFt2 = findMinimumRoomAreaFt2({
      refrigerant: "R-454B",
      chargeLb: 3 * LB_PER_KG,
      releaseHeightFt: 2.2 * FT_PER_M,
    });
    expect(Math.abs((areaFt2 ?? Number.NaN) / FT_PER_M ** 2 - 6.2)).toBeLessThan(0.05);
  });

  test("laws: four times the room for twice the charge or half the height; none below the first limit", () => {
    const room = { refrigerant: "R-32", chargeLb: 6, releaseHeightFt: 4 } as const;
    const area = findMinimumRoomAreaFt2(room) ?? Number.NaN;
    expect((findMinimumRoomAreaFt2({ ...room, chargeLb: 12 }) ?? Number.NaN) / area).toBeCloseTo(4, 9);
    expect((findMinimumRoomAreaFt2({ ...room, releaseHeightFt: 2 }) ?? Number.NaN) / area).toBeCloseTo(4, 9);
    expect(findMinimumRoomAreaFt2({ ...room, chargeLb: 4 })).toBeNull();
  });

  test("refuses more than the largest charge and heights outside the rule", () => {
    const room = { refrigerant: "R-32", chargeLb: 36, releaseHeightFt: 4 } as const;
    expect(() => findMinimumRoomAreaFt2(room)).toThrow(OutOfRangeError);
    expect(() => findMinimumRoomAreaFt2({ ...room, chargeLb: 6, releaseHeightFt: 1 })).toThrow(
      /releaseHeightFt/,
    );
  });
});

describe("findings", () => {
  const readings = {
    refrigerant: "R-454B",
    chargeLb: 3 * LB_PER_KG,
    roomAreaFt2: 120,
    releaseHeightFt: 2.2 * FT_PER_M,
  } as const;
  const verdict = (change: Partial<Parameters<typeof flammableChargeFindings>[0]>) =>
    flammableChargeFindings({ ...readings, ...change })[0]?.verdict;

  test("room against smallest room, 6.2 m² = 67 ft²", () => {
    expect(verdict({})).toBe("meets");
    expect(verdict({ roomAreaFt2: 60 })).toBe("falls short");
    expect(verdict({ roomAreaFt2: null })).toBe("not measured");
    expect(verdict({ chargeLb: null })).toBe("not measured");
    expect(verdict({ refrigerant: null })).toBe("not measured");
    expect(verdict({ chargeLb: 3, roomAreaFt2: null })).toBe("meets");
    expect(verdict({ chargeLb: 40 })).toBe("falls short");
    expect(() => verdict({ chargeLb: -1 })).toThrow(/chargeLb/);
  });

  test("nothing to say on a refrigerant that is not flammable; every finding defers to the manufacturer", () => {
    expect(flammableChargeFindings({ ...readings, refrigerant: "R-410A" })).toEqual([]);
    const [said] = flammableChargeFindings(readings);
    expect(said?.nextStep).toMatch(/manufacturer/);
    expect(said?.caution).toMatch(/ventilate/);
  });
});
