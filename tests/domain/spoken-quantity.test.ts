import { describe, expect, test } from "vitest";
import { readQuantityText } from "@/lib/domain/quantity-text";
import { spokenToTyped } from "@/lib/domain/spoken-quantity";

describe("what is said becomes what is typed", () => {
  test.each([
    ["fifty two point five", "52.5"],
    ["Fifty-two point five degrees", "52.5 degrees"],
    ["seventy five point zero", "75.0"],
    ["minus four", "-4"],
    ["negative zero point two two inches", "-0.22 inches"],
    ["eight hundred fifty two cfm", "852 cfm"],
    ["eight hundred and fifty two", "852"],
    ["eight fifty two", "852"],
    ["two forty volts", "240 volts"],
    ["one thousand two hundred", "1200"],
    ["twelve hundred", "1200"],
    ["one hundred five psi", "105 psi"],
    ["point two eight", "0.28"],
    ["point twenty five", "0.25"],
    ["point oh five", "0.05"],
    ["half", "0.5"],
    ["a half inch", "0.5 inch"],
    ["three quarters of an inch", "0.75 inch"],
    ["seven and a half pounds", "7.5 pounds"],
    ["7 ½", "7.5"],
    ["½", "0.5"],
    ["zero", "0"],
    ["nineteen", "19"],
    ["ninety nine point nine", "99.9"],
    ["52 point 5", "52.5"],
  ])("%s → %s", (said, typed) => {
    expect(spokenToTyped(said)).toBe(typed);
  });

  test.each(["0.5 inches", "1,250 cfm", "75°", "52.5", "", "-4", "not a number", "the second one"])(
    "what is typed already passes unharmed: %s",
    (typed) => {
      expect(spokenToTyped(typed)).toBe(typed);
    },
  );

  test.each(["twenty twenty", "fifty two three", "five six seven eight nine point"])(
    "what makes no number is left for the person to see: %s",
    (said) => {
      expect(readQuantityText(spokenToTyped(said), "cfm").ok).toBe(false);
    },
  );

  test("reaches the field with its unit", () => {
    expect(readQuantityText(spokenToTyped("zero point five inches"), "in. w.c.")).toEqual({
      ok: true,
      value: 0.5,
    });
    expect(readQuantityText(spokenToTyped("fifty two point five degrees"), "°F")).toEqual({
      ok: true,
      value: 52.5,
    });
    expect(readQuantityText(spokenToTyped("two hundred forty volts"), "V")).toEqual({ ok: true, value: 240 });
    expect(readQuantityText(spokenToTyped("two hundred forty volts"), "A").ok).toBe(false);
  });
});
