import { expect, test } from "vitest";
import { frictionRate, staticBudget } from "@/lib/engineering/airflow";

test("friction rate [F]: 0.50 − 0.32 = 0.18 in. w.c. over 240 ft → 0.075 per 100 ft", () => {
  const budget = staticBudget({
    components: {
      supplyInWc: null,
      returnInWc: null,
      filterInWc: 0.1,
      coilInWc: 0.19,
      otherInWc: 0.03,
    },
    fanExternalStaticInWc: 0.5,
    maximumInWc: null,
  });
  expect(budget.devicesInWc).toBeCloseTo(0.32, 12);
  expect(budget.availableForDuctsInWc).toBeCloseTo(0.18, 12);
  expect(frictionRate(budget.availableForDuctsInWc ?? Number.NaN, 240)).toBeCloseTo(0.075, 12);
  expect(budget.totalInWc).toBeNull();
  expect(budget.missing).toEqual(["supplyInWc", "returnInWc", "maximumInWc"]);
});

test("total against the maker's maximum: 0.15 + 0.12 + 0.14 + 0.2 + 0 = 0.61, so 0.11 over 0.50", () => {
  const budget = staticBudget({
    components: {
      supplyInWc: 0.15,
      returnInWc: 0.12,
      filterInWc: 0.14,
      coilInWc: 0.2,
      otherInWc: 0,
    },
    fanExternalStaticInWc: 0.5,
    maximumInWc: 0.5,
  });
  expect(budget.totalInWc).toBeCloseTo(0.61, 12);
  expect(budget.leftToMaximumInWc).toBeCloseTo(-0.11, 12);
  expect(budget.missing).toEqual([]);
});

test("refuses a negative drop, naming the part", () => {
  expect(() =>
    staticBudget({
      components: {
        supplyInWc: 0.1,
        returnInWc: -0.1,
        filterInWc: 0.1,
        coilInWc: 0.1,
        otherInWc: 0,
      },
      fanExternalStaticInWc: 0.5,
      maximumInWc: 0.5,
    }),
  ).toThrow("returnInWc");
  expect(() => frictionRate(0.1, 0)).toThrow("total effective length");
});
