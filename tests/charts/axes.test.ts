import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { axisOver } from "@/lib/charts/axes";
import { numberText, uncertaintyText } from "@/lib/charts/number-text";
import { spread } from "@/lib/charts/spread";

describe("an axis", () => {
  test("holds every value, ends on ticks and keeps ticks inside", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1e5, max: 1e5, noNaN: true }), { minLength: 1, maxLength: 30 }),
        (values) => {
          const axis = axisOver(values, [0, 100], 5);
          for (const value of values) {
            expect(axis.at(value)).toBeGreaterThanOrEqual(-1e-6);
            expect(axis.at(value)).toBeLessThanOrEqual(100 + 1e-6);
          }
          expect(axis.ticks[0]?.at).toBeCloseTo(0, 6);
          expect(axis.ticks.at(-1)?.at).toBeCloseTo(100, 6);
        },
      ),
      { seed: 20261125 },
    );
  });

  test("counts in round steps: 49 to 66 in steps of 2 becomes 48 to 66", () => {
    const axis = axisOver([49, 66], [0, 90], 8);
    expect(axis.ticks.map((tick) => tick.text)).toEqual([
      "48",
      "50",
      "52",
      "54",
      "56",
      "58",
      "60",
      "62",
      "64",
      "66",
    ]);
    expect(axis.at(57)).toBe(45);
  });

  test("shows the digits its step needs", () => {
    expect(axisOver([0, 0.5], [0, 1], 5).ticks.map((tick) => tick.text)).toEqual([
      "0.0",
      "0.1",
      "0.2",
      "0.3",
      "0.4",
      "0.5",
    ]);
  });

  test("gives a single value room", () => {
    expect(axisOver([50], [0, 100], 2).at(50)).toBe(50);
  });

  test("refuses to exist without a value", () => {
    expect(() => axisOver([], [0, 1], 5)).toThrow(RangeError);
  });
});

describe("numbers in words", () => {
  test.each([
    [34_800, 0, "34,800"],
    [-0.456, 2, "−0.46"],
    [-0.001, 2, "0.00"],
    [0.5, 2, "0.50"],
  ])("%d with %d digits is %s", (value, decimals, text) => {
    expect(numberText(value, decimals)).toBe(text);
  });

  test("not a number is refused", () => {
    expect(() => numberText(Number.NaN, 1)).toThrow(RangeError);
    expect(uncertaintyText(0.25, 2)).toBe("± 0.25");
  });
});

describe("labels that would touch", () => {
  test("move apart, keep their order and stay inside", () => {
    expect(spread([50, 52, 10], 15, 0, 100)).toEqual([50, 65, 10]);
    expect(spread([95, 98], 15, 0, 100)).toEqual([85, 100]);
  });
});
