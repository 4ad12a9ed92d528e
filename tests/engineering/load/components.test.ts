import { describe, expect, test } from "vitest";
import { componentFindings, LOAD_PARTS, type LoadComponents } from "@/lib/engineering/load";
import { limits } from "./house";

const SOURCE =
  "a total is the sum of its parts (physics); 2 % of the total is not counted (common practice, no source); sums by the arithmetic shown [C]";

const NOTHING = Object.fromEntries(
  Object.entries(LOAD_PARTS).flatMap(([total, { parts }]) =>
    [total, ...Object.keys(parts)].map((field) => [field, null]),
  ),
) as unknown as LoadComponents;

/** 8,000 + 3,000 + 3,500 + 500 + 2,000 + 1,500 + 1,000 + 1,400 + 3,100 + 0 = 24,000. */
const SENSIBLE = {
  sensibleCoolingBtuh: 24_000,
  sensibleWindowsBtuh: 8_000,
  sensibleWallsBtuh: 3_000,
  sensibleCeilingsBtuh: 3_500,
  sensibleFloorsBtuh: 500,
  sensibleInfiltrationBtuh: 2_000,
  sensibleVentilationBtuh: 1_500,
  sensibleDuctsBtuh: 1_000,
  sensiblePeopleBtuh: 1_400,
  sensibleAppliancesBtuh: 3_100,
  sensibleOtherBtuh: 0,
};

const of = (load: Partial<LoadComponents>) => componentFindings({ ...NOTHING, ...load }, limits);

describe(`load by component: ${SOURCE}`, () => {
  test("the seed is 2 %", () => {
    expect(limits["load.componentTolerance"]).toBe(2);
  });

  test("totals only: nothing to check, nothing said", () => {
    expect(of({ sensibleCoolingBtuh: 24_000, latentCoolingBtuh: 6_000, heatingBtuh: 36_000 })).toEqual([]);
  });

  test.each([
    // 2 % of 24,000 is 480.
    [24_000, "meets"],
    [24_480, "meets"],
    [23_530, "meets"],
    [24_500, "falls short"],
    [23_500, "falls short"],
    [30_000, "falls short"],
  ] as const)("parts of 24,000 against a total of %d: %s", (total, verdict) => {
    const [said, ...more] = of({ ...SENSIBLE, sensibleCoolingBtuh: total });
    expect(more).toEqual([]);
    expect(said?.verdict).toBe(verdict);
    expect(said?.figures[0]?.value).toBe(24_000);
    expect(said?.statement).toContain("24,000 Btu/h");
    expect(said?.nextStep === null).toBe(verdict === "meets");
  });

  test("parts that are not entered may be what is missing; more than the total is wrong whatever is missing", () => {
    const [less] = of({ ...SENSIBLE, sensiblePeopleBtuh: null });
    expect(less?.verdict).toBe("can't tell");
    expect(less?.statement).toMatch(/add up to 22,600 Btu\/h.* 1 of 10 parts are not entered: people/);
    const [more] = of({ ...SENSIBLE, sensibleOtherBtuh: null, sensibleWindowsBtuh: 9_000 });
    expect(more?.verdict).toBe("falls short");
  });

  test("each load has a finding of its own", () => {
    const said = of({
      ...SENSIBLE,
      latentCoolingBtuh: 5_000,
      latentPeopleBtuh: 1_000,
      latentInfiltrationBtuh: 4_000,
      heatingBtuh: 0,
      heatingOtherBtuh: 1,
    });
    expect(said.map((one) => [one.ruleId, one.verdict])).toEqual([
      ["load.components-sensible", "meets"],
      ["load.components-latent", "meets"],
      ["load.components-heating", "falls short"],
    ]);
  });

  test("parts without a total ask for it", () => {
    const [said] = of({ latentPeopleBtuh: 800 });
    expect(said?.verdict).toBe("not measured");
    expect(said?.inputs).toEqual(["latentCoolingBtuh"]);
  });

  test.each([-1, Number.NaN, Number.POSITIVE_INFINITY, 5_000_001])(
    "a part of %d is refused by name",
    (value) => {
      expect(() => of({ ...SENSIBLE, sensibleWallsBtuh: value })).toThrow(/sensibleWallsBtuh/);
      expect(() => of({ ...SENSIBLE, sensibleCoolingBtuh: value })).toThrow(/sensibleCoolingBtuh/);
    },
  );
});
