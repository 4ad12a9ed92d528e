import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { designAirflowCfm, supplyDifferenceF } from "@/lib/engineering/airflow";
import { OutOfRangeError } from "@/lib/engineering/errors";

const SOURCE = "ANSI/ACCA 3 Manual S-2014, supply temperature difference [M+ recalled]";

test.each([
  [0.6, 21],
  [0.79, 21],
  [0.8, 19],
  [0.82, 19],
  [0.85, 19],
  [0.851, 17],
  [1, 17],
])(`sensible ratio %d → %d °F (${SOURCE})`, (ratio, difference) => {
  expect(supplyDifferenceF(ratio)).toBe(difference);
});

test("design airflow [C]: 24,200 at ratio 0.86 → 24,200/(1.1·17) = 1,294.1; at 0.78 → 24,200/(1.1·21) = 1,047.6", () => {
  expect(designAirflowCfm(24_200, supplyDifferenceF(0.86), 1)).toBeCloseTo(1_294.12, 1);
  expect(designAirflowCfm(24_200, supplyDifferenceF(0.78), 1)).toBeCloseTo(1_047.62, 1);
});

test("density ratio at altitude is P/14.696 [F]: at 3,000 ft 13.173 psia needs 14.696/13.173 = 1.1156 times the air", () => {
  const seaLevel = designAirflowCfm(24_200, 19, 1);
  expect(designAirflowCfm(24_200, 19, 13.173 / 14.696) / seaLevel).toBeCloseTo(1.11562, 4);
});

describe("laws", () => {
  it("carries exactly the load it was asked to carry", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1_000, max: 100_000, noNaN: true }),
        fc.double({ min: 5, max: 35, noNaN: true }),
        fc.double({ min: 0.6, max: 1.05, noNaN: true }),
        (load, difference, density) => {
          const airflow = designAirflowCfm(load, difference, density);
          expect((1.1 * airflow * difference * density) / load).toBeCloseTo(1, 12);
        },
      ),
      { seed: 5 },
    );
  });

  it.each([
    [0, 19, 1, "sensible load"],
    [24_000, 4.9, 1, "supply temperature difference"],
    [24_000, 19, Number.NaN, "air density ratio"],
  ])("refuses %d, %d, %d naming the input", (load, difference, density, name) => {
    expect(() => designAirflowCfm(load, difference, density)).toThrow(OutOfRangeError);
    expect(() => designAirflowCfm(load, difference, density)).toThrow(name);
  });
});
