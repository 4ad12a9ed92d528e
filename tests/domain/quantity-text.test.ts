import { describe, expect, test } from "vitest";
import { fieldSchema } from "@/lib/domain/field-schema";
import type { FieldDef } from "@/lib/domain/fields";
import { readQuantityText } from "@/lib/domain/quantity-text";
import { STAGE_FIELDS } from "@/lib/domain/stages";

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
    // Thousands with a space, as a report in another language or a word processor sets them.
    ["31 000", "Btu/h", 31000],
    ["31\u00a0000 Btu/h", "Btu/h", 31000],
    ["1\u202f234\u202f500.5", "Btu/h", 1234500.5],
  ])("%s in a %s field is %d", (text, unit, value) => {
    expect(readQuantityText(text, unit)).toEqual({ ok: true, value });
  });

  // t/°F = 1.8 t/°C + 32 (BIPM, exact); between two temperatures the 32 drops out.
  test.each([
    ["24 °C", "°F", 75.2, "24 °C is 75.2 °F"],
    ["24c", "°F", 75.2, "24 °C is 75.2 °F"],
    ["-40 ℃", "°F", -40, "-40 °C is -40 °F"],
    ["0 degrees celsius", "°F", 32, "0 °C is 32 °F"],
    ["23.9 °C", "°F", 75.02, "23.9 °C is 75.02 °F"],
    ["5 °C", "Δ°F", 9, "5 °C is 9 °F"],
    ["-1 C", "Δ°F", -1.8, "-1 °C is -1.8 °F"],
    ["5 K", "Δ°F", 9, "5 °C is 9 °F"],
  ])("%s in a %s field is read as %d, and said", (text, unit, value, converted) => {
    expect(readQuantityText(text, unit)).toEqual({ ok: true, value, converted });
  });

  test("every field of a stage that is a difference of temperatures reads °C without the 32", () => {
    const all = Object.values(STAGE_FIELDS).flatMap((fields) => Object.entries<FieldDef>(fields));
    const temperatures = all.filter(([, field]) => field.kind === "number" && field.unit === "°F");
    const read = (field: FieldDef) =>
      fieldSchema({ ...field, min: -500, max: 500 } as FieldDef).parse("10 °C");
    const differences = temperatures.filter(([, field]) => read(field) === 18).map(([key]) => key);
    expect(differences.toSorted()).toEqual(
      [
        "firstStageStartOffsetF",
        "secondStageStartOffsetF",
        "coolingPastSetpointF",
        "indoorTemperatureCorrectionF",
        "firstHeatRiseF",
        "secondHeatRiseF",
        "targetSubcoolingF",
        "targetSuperheatF",
      ].toSorted(),
    );
    for (const [key, field] of temperatures)
      if (!differences.includes(key)) expect(read(field), key).toBe(50);
  });

  test("nothing typed is not given, never zero", () => {
    expect(readQuantityText("   ", "°F")).toEqual({ ok: true, value: null });
  });

  test.each([
    ["24 °C", "Btu/h", "another unit"],
    ["5 K", "°F", "another unit"],
    ["24 °R", "°F", "another unit"],
    ["590 l/s", "cfm", "another unit"],
    ["abc", "cfm", "not a number"],
    ["1.2.3", "cfm", "another unit"],
    ["1,5", "in. w.c.", "point for decimals"],
    ["-", "°F", "not a number"],
    ["12,50,000", "Btu/h", "point for decimals"],
    ["24,000¹", "Btu/h", "raised digit"],
    ["31 00", "Btu/h", "more than one number"],
    ["24000 - 26000", "Btu/h", "more than one number"],
    // 1 ton = 12,000 Btu/h; 1 kW = 3,412.142 Btu/h; 1 L = 1/28.316847 ft³; 1 in. w.c. = 249.0889 Pa; 1 ft = 0.3048 m.
    ["2.5 tons", "Btu/h", "enter 30,000,"],
    ["24.5 MBH", "Btu/h", "enter 24,500,"],
    ["7.2 kW", "Btu/h", "enter 24,570,"],
    ["30,000 Btu/h", "tons", "enter 2.5,"],
    ["590 L/s", "cfm", "enter 1,250,"],
    ["125 Pa", "in. w.c.", "enter 0.5018,"],
    ["200 m²", "ft²", "enter 2,153,"],
    ["3.5 m", "ft", "enter 11.48,"],
  ])("%s in a %s field is refused: %s", (text, unit, reason) => {
    const read = readQuantityText(text, unit);
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.problem).toContain(reason);
  });
});
