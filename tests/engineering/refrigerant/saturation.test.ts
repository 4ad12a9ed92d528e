import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ImpossibleStateError, OutOfRangeError } from "@/lib/engineering/errors";
import {
  REFRIGERANTS,
  type Refrigerant,
  saturationPressurePsia,
  saturationTempF,
  saturationTempUncertaintyF,
  saturationUncertaintyPct,
} from "@/lib/engineering/refrigerant";
import { pressureOnCurve, saturationCurve } from "@/lib/engineering/refrigerant/saturation-curve";

const SOURCE = "CoolProp 8.0.0 saturation table [C]";
const SIDES = ["bubble", "dew"] as const;
const lastF = (refrigerant: Refrigerant) => (refrigerant === "R-454B" ? 132 : 150);

type Row = {
  readonly refrigerant: string;
  readonly tempF: number;
  readonly bubble: number;
  readonly dew: number;
};
const rows: readonly Row[] = readFileSync(
  new URL("../../fixtures/refrigerant/refrigerant-saturation.csv", import.meta.url),
  "utf8",
)
  .trim()
  .split("\n")
  .slice(1)
  .map((line) => {
    const [refrigerant = "", tempF, bubble, dew] = line.split(",");
    return { refrigerant, tempF: Number(tempF), bubble: Number(bubble), dew: Number(dew) };
  });
const rowsOf = (refrigerant: Refrigerant) =>
  rows.filter((row) => row.refrigerant === refrigerant && row.tempF <= lastF(refrigerant));

describe(`saturation table: ${SOURCE}`, () => {
  test("every row of the file, and only those, up to the end of each unbroken part", () => {
    expect(REFRIGERANTS).toEqual(["R-410A", "R-32", "R-454B", "R-22", "R-134a"]);
    for (const refrigerant of REFRIGERANTS) {
      const found = rowsOf(refrigerant);
      expect(found).toHaveLength((lastF(refrigerant) + 40) / 2 + 1);
      for (const row of found) {
        for (const side of SIDES) {
          expect(saturationPressurePsia(refrigerant, row.tempF, side) / row[side]).toBeCloseTo(1, 12);
        }
      }
    }
  });
});

const PUBLISHED = "published R-410A pressure–temperature table, bubble, psig [F]";

describe(PUBLISHED, () => {
  test.each([
    [40, 118.8],
    [100, 318.5],
    [120, 419.5],
  ])("%d °F is %d psig", (tempF, expected) => {
    // Printed to 0.1 psi.
    expect(Math.abs(saturationPressurePsia("R-410A", tempF, "bubble") - 14.696 - expected)).toBeLessThan(
      0.05,
    );
  });
});

describe("between the points", () => {
  test("a curve through every other row meets the rows left out within 0.05 %", () => {
    // The full table's rows are twice as close, so its own error is far smaller still (a spline's falls with the fourth power).
    let worst = 0;
    for (const refrigerant of REFRIGERANTS) {
      for (const side of SIDES) {
        const all = rowsOf(refrigerant);
        const kept = all.filter((_, index) => index % 2 === 0);
        const curve = saturationCurve(
          -40,
          4,
          kept.map((row) => row[side]),
        );
        for (const row of all) {
          if (row.tempF > curve.lastF) continue;
          const error = Math.abs(pressureOnCurve(curve, row.tempF) / row[side] - 1);
          worst = Math.max(worst, error);
          expect(error, `${refrigerant} ${side} ${row.tempF} °F`).toBeLessThan(0.0005);
        }
      }
    }
    // Zero would mean that nothing was left out. The rows are rounded to 0.0001 psia, 0.0007 % of the lowest pressure
    // (7.4 psia): the curve adds hardly anything to that, at the ends neither.
    expect(worst).toBeGreaterThan(1e-9);
    expect(worst).toBeLessThan(0.000012);
  });

  const anywhere = fc
    .record({
      refrigerant: fc.constantFrom(...REFRIGERANTS),
      side: fc.constantFrom(...SIDES),
      share: fc.double({ min: 0, max: 1, noNaN: true }),
    })
    .map(({ refrigerant, side, share }) => ({
      refrigerant,
      side,
      tempF: -40 + share * (lastF(refrigerant) + 40),
    }));

  test("temperature undoes pressure to 1e-9 °F", () => {
    fc.assert(
      fc.property(anywhere, ({ refrigerant, side, tempF }) => {
        const pressure = saturationPressurePsia(refrigerant, tempF, side);
        expect(Math.abs(saturationTempF(refrigerant, pressure, side) - tempF)).toBeLessThan(1e-9);
      }),
      { seed: 51, numRuns: 5_000 },
    );
  });

  test("pressure rises with temperature, bubble is not below dew, the curve has no jump or kink", () => {
    fc.assert(
      fc.property(anywhere, ({ refrigerant, side, tempF }) => {
        const t = Math.min(tempF, lastF(refrigerant) - 0.02);
        const pressureAt = (offsetF: number): number =>
          saturationPressurePsia(refrigerant, t + offsetF, side);
        const [a, b, c] = [pressureAt(0), pressureAt(0.01), pressureAt(0.02)] as const;
        expect(b).toBeGreaterThan(a);
        expect(c - b).toBeGreaterThan(0.99 * (b - a));
        expect(c - b).toBeLessThan(1.01 * (b - a));
        expect(saturationPressurePsia(refrigerant, t, "bubble")).toBeGreaterThanOrEqual(
          saturationPressurePsia(refrigerant, t, "dew") * (1 - 1e-6),
        );
      }),
      { seed: 52, numRuns: 2_000 },
    );
  });
});

describe("R-454B mixture models differ by about 1 %: ±2 % is shown [F]", () => {
  test("as pressure and as temperature", () => {
    expect(saturationUncertaintyPct("R-454B")).toBe(2);
    // Independent arithmetic: rows 38 and 42 °F give the slope of ln P; 2 % over it is the temperature.
    const dew = (tempF: number) => rowsOf("R-454B").find((row) => row.tempF === tempF)?.dew ?? Number.NaN;
    const slope = Math.log(dew(42) / dew(38)) / 4;
    expect(saturationTempUncertaintyF("R-454B", dew(40), "dew")).toBeCloseTo(0.02 / slope, 3);
    expect(saturationTempUncertaintyF("R-410A", 133.4861, "bubble")).toBeLessThan(0.2);
  });
});

describe("refusals", () => {
  test.each([
    ["below the table", () => saturationPressurePsia("R-410A", -40.01, "dew")],
    ["above the table", () => saturationPressurePsia("R-410A", 150.01, "dew")],
    ["across the gap of R-454B", () => saturationPressurePsia("R-454B", 133, "bubble")],
    ["not a number", () => saturationPressurePsia("R-32", Number.NaN, "bubble")],
    ["pressure below the table", () => saturationTempF("R-22", 1, "dew")],
    ["pressure not a number", () => saturationTempF("R-22", Number.NaN, "dew")],
  ])("%s", (_name, call) => {
    expect(call).toThrow(OutOfRangeError);
  });

  test("a refrigerant without a table is named", () => {
    expect(() => saturationPressurePsia("R-999" as Refrigerant, 40, "dew")).toThrow(ImpossibleStateError);
    expect(() => saturationPressurePsia("R-999" as Refrigerant, 40, "dew")).toThrow(/R-999/);
  });
});
