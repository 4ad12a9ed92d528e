import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { auxiliaryHeatKw, balancePoint, heatingFindings } from "@/lib/engineering/equipment";
import { ImpossibleStateError } from "@/lib/engineering/errors";

const SOURCE = "two straight lines, aux kW = (load − capacity) / 3,412 (computed)";
const LINES = {
  capacityAt17FBtuh: 20_000,
  capacityAt47FBtuh: 34_000,
  designLoadBtuh: 36_000,
  designF: 10,
  zeroLoadF: 70,
};

describe(`balancePoint against ${SOURCE}`, () => {
  it("34,000 at 47, 20,000 at 17, 36,000 load at 10 with 70 zero → 28.1 °F, 16,733 Btu/h, 5.65 kW", () => {
    const found = balancePoint(LINES);
    // 600 · (70 − t) = 20,000 + 466.67 · (t − 17) → t = 29,933 / 1,066.67
    expect(found.balancePointF).toBeCloseTo(28.0625, 4);
    expect(found.balancePointF).toBeCloseTo(28.1, 1);
    expect(found.capacityAtDesignBtuh).toBeCloseTo(16_733.33, 2);
    expect(found.auxiliaryAtDesignKw).toBeCloseTo(5.65, 2);
    expect(found.beyondRatedPoints).toBe(true); // design 10 °F is below 17 °F
  });

  it("needs no auxiliary heat when the balance point is below design", () => {
    const found = balancePoint({ ...LINES, designF: 30, designLoadBtuh: 12_000 });
    expect(found.balancePointF).toBeLessThan(30);
    expect(found.auxiliaryAtDesignKw).toBe(0);
    expect(balancePoint({ ...LINES, designF: 18, designLoadBtuh: 30_000 }).beyondRatedPoints).toBe(false);
  });

  it("refuses contradictions", () => {
    expect(() => balancePoint({ ...LINES, capacityAt17FBtuh: 35_000 })).toThrow(/swapped/);
    expect(() => balancePoint({ ...LINES, zeroLoadF: 10 })).toThrow(ImpossibleStateError);
    expect(() => balancePoint({ ...LINES, designF: -40 })).toThrow(/maker's capacity/);
    expect(() => balancePoint({ ...LINES, designLoadBtuh: Number.NaN })).toThrow(/designLoadBtuh/);
  });

  it("takes the maker's capacity at design when it is known", () => {
    expect(auxiliaryHeatKw(36_000, 16_733)).toBeCloseTo(5.65, 2);
    expect(auxiliaryHeatKw(10_000, 12_000)).toBe(0);
  });
});

describe("heatingFindings", () => {
  it("informs without a verdict", () => {
    expect(heatingFindings(LINES, null)[0]).toMatchObject({
      ruleId: "equipment.balance-point",
      verdict: null,
      statement:
        "The balance point is 28.1 °F; at 10 °F the heat pump gives 16,733 Btu/h and 5.65 kW of auxiliary heat are needed.",
    });
  });

  it("holds the auxiliary heat installed against the 5.65 kW needed", () => {
    const verdict = (kW: number) => heatingFindings(LINES, kW)[0]?.verdict;
    expect([verdict(5.6), verdict(5.7)]).toEqual(["falls short", "meets"]);
    expect(heatingFindings(LINES, 5)[0]?.nextStep).toMatch(/^Add 0\.[67] kW/);
  });

  it("says what is missing", () => {
    expect(heatingFindings({ ...LINES, designLoadBtuh: null, designF: null }, null)[0]).toMatchObject({
      verdict: "not measured",
      inputs: ["designLoadBtuh", "designF"],
    });
  });
});

describe("laws", () => {
  it("load equals capacity at the balance point; more load moves it up", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 8_000, max: 60_000, noNaN: true }),
        fc.double({ min: 1, max: 2, noNaN: true }),
        fc.double({ min: 10_000, max: 90_000, noNaN: true }),
        fc.double({ min: 5, max: 40, noNaN: true }),
        (at17, factor, load, designF) => {
          const lines = {
            capacityAt17FBtuh: at17,
            capacityAt47FBtuh: at17 * factor,
            designLoadBtuh: load,
            designF,
            zeroLoadF: 65,
          };
          const { balancePointF } = balancePoint(lines);
          const capacity = at17 + ((at17 * factor - at17) / 30) * (balancePointF - 17);
          const need = (load * (65 - balancePointF)) / (65 - designF);
          expect(Math.abs(capacity - need)).toBeLessThan(1e-6 * load);
          expect(balancePoint({ ...lines, designLoadBtuh: load * 1.1 }).balancePointF).toBeGreaterThan(
            balancePointF,
          );
        },
      ),
      { seed: 20261125, numRuns: 300 },
    );
  });
});
