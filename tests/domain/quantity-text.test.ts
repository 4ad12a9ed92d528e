import { describe, expect, test } from "vitest";
import { readQuantityText } from "@/lib/domain/quantity-text";

describe("what a person types for a quantity", () => {
  test.each([
    ["1,250 cfm", "cfm", 1250],
    ['0.5"', "in. w.c.", 0.5],
    ["0.50 in. w.c.", "in. w.c.", 0.5],
    [".5", "in. w.c.", 0.5],
    ["75°", "°F", 75],
    ["75 F", "°F", 75],
    ["−4", "°F", -4],
    ["24,000 Btu/h", "Btu/h", 24000],
    ["55%", "%", 55],
    ["  12 ", "min", 12],
    ["3", "", 3],
  ])("%s in a %s field is %d", (text, unit, value) => {
    expect(readQuantityText(text, unit)).toEqual({ ok: true, value });
  });

  test("nothing typed is not given, never zero", () => {
    expect(readQuantityText("   ", "°F")).toEqual({ ok: true, value: null });
  });

  test.each([
    ["24 °C", "°F", "another unit"],
    ["590 l/s", "cfm", "another unit"],
    ["abc", "cfm", "not a number"],
    ["1.2.3", "cfm", "another unit"],
    ["1,5", "in. w.c.", "point for decimals"],
    ["-", "°F", "not a number"],
    ["12,50,000", "Btu/h", "point for decimals"],
  ])("%s in a %s field is refused: %s", (text, unit, reason) => {
    const read = readQuantityText(text, unit);
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.problem).toContain(reason);
  });
});
