import { expect, test } from "vitest";
import { flowPlateAirflowCfm, flowPlateCorrection } from "@/lib/engineering/airflow";

const SOURCE =
  "Physics: in ducts that stay as they are pressure goes with the square of airflow; the method, measured cfm · √(supply static without / with the plate), recalled [M+]";

test.each([
  // √(0.36 / 0.25) = 0.6 / 0.5 = 1.2
  [1_000, 0.36, 0.25, 1_200],
  // √(0.30 / 0.27) = √1.1111 = 1.05409
  [900, 0.3, 0.27, 948.68],
  [1_000, 0.3, 0.3, 1_000],
])(`${SOURCE}: %d cfm at %d and %d in. w.c. is %d cfm`, (plateCfm, supplyStaticInWc, withPlate, expected) => {
  const found = flowPlateAirflowCfm({ plateCfm, supplyStaticInWc, supplyStaticWithPlateInWc: withPlate });
  expect(found).toBeCloseTo(expected, 1);
});

const STAGE = { stage: "Full capacity", fieldPrefix: "" };
const READINGS = { plateCfm: 1_000, supplyStaticInWc: 0.36, supplyStaticWithPlateInWc: 0.25 };

test("the corrected airflow entered meets; the plate's own does not pass as the airflow in use", () => {
  expect(flowPlateCorrection({ ...STAGE, ...READINGS, airflowCfm: 1_200 })).toMatchObject({
    verdict: "meets",
    statement:
      "Full capacity: the plate shows 1,000 cfm, which at supply static 0.36 in. w.c. with the filter and 0.25 with the plate is 1,200 cfm in use, as entered.",
    nextStep: null,
  });
  // 1 % of 1,200 is 12 cfm.
  expect(flowPlateCorrection({ ...STAGE, ...READINGS, airflowCfm: 1_211 }).verdict).toBe("meets");
  expect(flowPlateCorrection({ ...STAGE, ...READINGS, airflowCfm: 1_213 }).verdict).toBe("can't tell");
  expect(flowPlateCorrection({ ...STAGE, ...READINGS, airflowCfm: 1_000 })).toMatchObject({
    verdict: "can't tell",
    nextStep: "Enter 1,200 cfm as the airflow, or say how the other was measured.",
  });
});

test("a static that rises with the plate in place is told, and what is missing is named", () => {
  const rose = flowPlateCorrection({
    ...STAGE,
    ...{ plateCfm: 1_000, supplyStaticInWc: 0.25, supplyStaticWithPlateInWc: 0.36, airflowCfm: 833 },
  });
  expect(rose.verdict).toBe("can't tell");
  expect(rose.statement).toContain("a plate can only add resistance");
  expect(
    flowPlateCorrection({ ...STAGE, ...READINGS, supplyStaticWithPlateInWc: null, airflowCfm: null }),
  ).toMatchObject({ verdict: "not measured", inputs: ["supplyStaticWithPlateInWc", "airflowCfm"] });
});

test("a reading that no plate and no duct gives is refused by name", () => {
  expect(() => flowPlateAirflowCfm({ ...READINGS, supplyStaticInWc: 0 })).toThrow(/supplyStaticInWc/);
  expect(() => flowPlateAirflowCfm({ ...READINGS, plateCfm: Number.NaN })).toThrow(/plateCfm/);
});
