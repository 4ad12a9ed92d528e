import { expect, test } from "vitest";
import { tableCapacity } from "@/lib/domain/evaluate/table-capacity";
import { performanceAt } from "@/lib/engineering/equipment";

const AT = { indoorDbF: 80, indoorWbF: 67, outdoorDbF: 95, airflowCfm: 1_200, elevationFt: 0 };
/** A table of two airflows; at the rated point 36,000 Btu/h, 0.75 of it sensible. */
const TABLE = [1_200, 1_400].map((airflowCfm) => ({
  ...{ outdoorDbF: 95, enteringWbF: 67, enteringDbF: 80, airflowCfm },
  ...{ totalBtuh: 36_000, sensibleBtuh: 27_000, powerW: null },
}));
const askedOf = (table: typeof TABLE) =>
  tableCapacity(
    performanceAt(table, { outdoorDbF: 95, enteringWbF: 67, enteringDbF: 80, airflowCfm: AT.airflowCfm }),
    AT,
  );

const SOURCE = "rated point 80/67, 36,000 Btu/h, 0.75, 1,200 cfm with real-gas moist air (computed)";

test(`of a maker's table the air that leaves follows from heat and water: ${SOURCE}`, () => {
  const { leavingDbF, leavingDewPointF } = askedOf(TABLE);
  expect(Math.abs((leavingDbF ?? 0) - 58.78)).toBeLessThan(0.06);
  // W 0.009644: 0.2244 psia, which steam tables give at 56.3 °F (recalled); 0.5 % of ideal gas is 0.15 °F.
  expect(Math.abs((leavingDewPointF ?? 0) - 56.3)).toBeLessThan(0.2);
});

test("a table for another airflow than the job's says nothing of it", () => {
  const { leavingDbF, leavingDewPointF, remarks } = askedOf(TABLE.slice(1));
  expect([leavingDbF, leavingDewPointF]).toEqual([null, null]);
  expect(remarks.join()).toContain("1400 cfm only");
});
