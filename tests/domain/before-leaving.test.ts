import { describe, expect, test } from "vitest";
import { dryAnswer } from "@/lib/domain/dry-answer";
import { evaluateJob } from "@/lib/domain/evaluate";
import { airflowByMethod } from "@/lib/domain/evaluate/airflow-by-method";
import { leftSettings } from "@/lib/domain/left-settings";
import { whatToBring } from "@/lib/domain/what-to-bring";
import { equipmentRules } from "@/lib/engineering/equipment";
import { type Finding, finding, type Rule, type Verdict } from "@/lib/engineering/findings";
import { startupRules } from "@/lib/engineering/startup";
import { FULL_JOB } from "../support/full-job";

const SOURCE =
  "heat balance on standard air (physics): cfm = V·A·3.412 / (1.08·ΔT·density ratio); arithmetic in the test";

const said = (rule: Rule, verdict: Verdict, inputs = ["secondAirflowCfm"]): Finding =>
  finding(rule, { verdict, statement: verdict, inputs });
const answer = (startup: readonly Finding[], equipment: readonly Finding[] = [], controlStages: 1 | 2 = 1) =>
  dryAnswer(
    { ...FULL_JOB, controlStages },
    {
      findings: {
        load_summary: [],
        equipment_selection: equipment,
        airflow_setup: [],
        control_setup: [],
        startup_record: startup,
        humidity_review: [],
      },
    },
  );
const { moistureRemoval, temperatureSplit } = startupRules;

describe("will this house be dry", () => {
  test("yes needs the moisture removal measured and met", () => {
    expect(answer([said(moistureRemoval, "meets")]).answer).toBe("yes");
    expect(answer([said(temperatureSplit, "meets")]).answer).toBe("not measured");
    expect(answer([said(moistureRemoval, "not measured")]).answer).toBe("not measured");
    expect(answer([]).answer).toBe("not measured");
  });

  test("whatever falls short makes it no, with the reason", () => {
    const no = answer([said(moistureRemoval, "meets"), said(temperatureSplit, "falls short")]);
    expect(no.answer).toBe("no");
    expect(no.against.map((one) => one.ruleId)).toEqual([temperatureSplit.id]);
    expect(no.sentence).toBe("Not as it stands: temperature split falls short.");
    expect(
      answer([said(moistureRemoval, "meets")], [said(equipmentRules.humidityCapability, "falls short")])
        .answer,
    ).toBe("no");
  });

  test("an unsure moisture removal is never taken for good", () => {
    expect(answer([said(moistureRemoval, "can't tell")]).answer).toBe("can't tell");
  });

  test("a stage that was not measured is never taken for good, and its readings are named", () => {
    const first = ["firstAirflowCfm"];
    const full = said(moistureRemoval, "meets");
    expect(answer([full], [], 2)).toMatchObject({
      answer: "not measured",
      sentence:
        "Nobody can say: what it should take out at these conditions is not known. At full capacity it takes out the water it should.",
    });
    expect(answer([full, said(moistureRemoval, "can't tell", first)], [], 2).answer).toBe("can't tell");
    expect(answer([full, said(moistureRemoval, "meets", first)], [], 2)).toMatchObject({
      answer: "yes",
      sentence: "Yes, as far as these readings tell: it takes out the water it should at both stages.",
    });
    // A whole job of which the tech has done full capacity alone.
    const startup = {
      ...FULL_JOB.inputs.startup_record,
      ...{ firstReturnDbF: null, firstReturnWbF: null, firstSupplyDbF: null, firstAirflowCfm: null },
      secondCondensateLb: null,
    };
    const job = { ...FULL_JOB, inputs: { ...FULL_JOB.inputs, startup_record: startup } };
    expect(dryAnswer(job, evaluateJob(job))).toMatchObject({
      answer: "not measured",
      sentence:
        "Nobody can say: the moisture removal has not been measured at the first stage. At full capacity it takes out the water it should.",
      unmeasured: ["firstReturnDbF", "firstReturnWbF", "firstSupplyDbF", "firstAirflowCfm"],
    });
  });

  test("what is open names what would settle it", () => {
    const { answer: said, open, against } = dryAnswer(FULL_JOB, evaluateJob(FULL_JOB));
    expect([said, against]).toEqual(["can't tell", []]);
    expect(open[0]).toMatchObject({ ruleId: moistureRemoval.id, verdict: "can't tell" });
    expect(open.every((one) => one.nextStep !== null)).toBe(true);
  });

  test("a rule that only informs does not make it no", () => {
    const unverified = {
      ...temperatureSplit,
      basis: { ...temperatureSplit.basis, certainty: "unverified" },
    } as const;
    expect(answer([said(moistureRemoval, "meets"), said(unverified, "falls short")]).answer).toBe("yes");
  });
});

describe(`airflow by the method chosen (${SOURCE})`, () => {
  const withStartup = (inputs: Partial<typeof FULL_JOB.inputs.startup_record>) => ({
    ...FULL_JOB,
    elevationFt: 0,
    inputs: { ...FULL_JOB.inputs, startup_record: { ...FULL_JOB.inputs.startup_record, ...inputs } },
  });

  test("temperature rise: 240 V × 41.7 A = 10.008 kW over 35 °F at sea level is 903 cfm", () => {
    // 10.008 · 3,412 / (1.08 · 35 · 1) = 34,147 / 37.8 = 903.4
    const found = airflowByMethod(
      withStartup({
        secondAirflowMethod: "temperature rise",
        secondHeatRiseF: 35,
        heaterVolts: 240,
        heaterAmps: 41.7,
      }),
      "second",
    );
    expect(found.known && found.value).toBeCloseTo(903.4, 0);
  });

  test("what is missing is named, and nothing is worked out for a hood", () => {
    const rise = airflowByMethod(
      withStartup({
        secondAirflowMethod: "temperature rise",
        secondHeatRiseF: null,
        heaterVolts: 240,
        heaterAmps: null,
      }),
      "second",
    );
    expect(rise).toMatchObject({ known: false, missing: ["secondHeatRiseF", "heaterAmps"] });
    expect(airflowByMethod(withStartup({ secondAirflowMethod: "flow plate" }), "second").known).toBe(false);
  });

  test("a flow plate: 1,000 cfm at 0.36 in. w.c. with the filter and 0.25 with the plate is 1,200 cfm, and is held against what is entered", () => {
    // √(0.36 / 0.25) = 1.2
    const job = withStartup({
      secondAirflowMethod: "flow plate",
      secondPlateCfm: 1_000,
      secondSupplyStaticInWc: 0.36,
      secondPlateSupplyStaticInWc: 0.25,
      secondAirflowCfm: 1_000,
    });
    const found = airflowByMethod(job, "second");
    expect(found.known && found.value).toBeCloseTo(1_200, 6);
    const told = evaluateJob(job).findings.startup_record.find((one) => one.ruleId === "airflow.flow-plate");
    expect(told).toMatchObject({ verdict: "can't tell" });
    expect(told?.inputs).toContain("secondPlateSupplyStaticInWc");
    const hood = evaluateJob(withStartup({ secondAirflowMethod: "flow plate" })).findings.startup_record;
    expect(hood.some((one) => one.ruleId === "airflow.flow-plate")).toBe(false);
  });

  test("static table: on a line of the table it is that line's airflow", () => {
    const row = FULL_JOB.model?.fan[0] ?? expect.fail("a fan row is needed");
    const found = airflowByMethod(
      withStartup({
        secondAirflowMethod: "static table",
        leftSecondStageAirflowSetting: row.airflowSetting,
        secondReturnStaticInWc: 0,
        secondSupplyStaticInWc: row.externalStaticInWc,
      }),
      "second",
    );
    expect(found.known && found.value).toBeCloseTo(row.airflowCfm, 6);
  });
});

test("settings as left stand beside what design asks, with what the equipment offers", () => {
  const settings = leftSettings(FULL_JOB);
  const find = (key: string) => settings.find((one) => one.key === key) ?? expect.fail(key);
  expect(find("leftCapacitySetting")).toMatchObject({
    designed: FULL_JOB.inputs.equipment_selection.capacitySetting,
    options: FULL_JOB.model?.data.capacitySettings.map((one) => one.name),
  });
  expect(find("leftCoolingSetpointF").designed).toBe(FULL_JOB.inputs.control_setup.coolingSetpointF);
});

test("what to bring names the company's instruments, the refrigerant of the nameplate and its danger", () => {
  const flammable = { ...FULL_JOB.inputs.startup_record, refrigerant: "R-454B" as const };
  const job = { ...FULL_JOB, inputs: { ...FULL_JOB.inputs, startup_record: flammable } };
  const { things, caution } = whatToBring(job, "2099-01-01");
  expect(things.map((one) => one.what)).toContain("Refrigerant R-454B");
  expect(caution).toMatch(/flammable/);
  expect(things.some((one) => one.remark?.includes("calibration has ended"))).toBe(true);
  const none = whatToBring({ ...job, instruments: [] }, "2026-07-01");
  expect(none.things[0]?.remark).toMatch(/none in the company/);
  const retired = job.instruments.map((one) => ({ ...one, retired: true }));
  expect(whatToBring({ ...job, instruments: retired }, "2026-07-01").things).toEqual(none.things);
});
