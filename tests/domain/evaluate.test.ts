import { describe, expect, test } from "vitest";
import { attentionReasons } from "@/lib/domain/attention";
import { type Evaluation, evaluateJob } from "@/lib/domain/evaluate";
import type { JobRecords } from "@/lib/domain/jobs";
import { aJobContext, DESIGNED } from "./a-job-context";

const SOURCE =
  "the valid range stated at each equation (computed); one ton is 12,000 Btu/h, worked out by hand";

const lineOf = (evaluation: Evaluation, key: string) => {
  const line = evaluation.ledger.find((one) => one.key === key);
  if (!line) throw new Error(`The ledger has no line ${key}.`);
  return line;
};
const startup = (evaluation: Evaluation, ruleId: string) =>
  evaluation.findings.startup_record.filter((one) => one.ruleId === ruleId);

const READ_BOTH_STAGES = {
  ...DESIGNED,
  startup_record: {
    outdoorDbF: 95,
    refrigerant: "R-410A",
    secondAirflowCfm: 1_190,
    secondReturnDbF: 75,
    secondReturnWbF: 63,
    secondSupplyDbF: 55,
    secondSupplyWbF: 54,
    firstAirflowCfm: 810,
    firstReturnDbF: 75,
    firstReturnWbF: 63,
    firstSupplyDbF: 55,
    firstSupplyWbF: 54,
    firstReturnStaticInWc: 0.2,
    firstSupplyStaticInWc: 0.3,
    firstSuctionPressurePsig: 125,
    firstLiquidPressurePsig: 350,
    secondSuctionPressurePsig: 122,
    secondLiquidPressurePsig: 365,
    supplyVoltage: 240,
    outdoorUnitAmps: 12,
  },
} as const;

describe(`the ledger, ${SOURCE}`, () => {
  test("airflow per ton is one number, in the ledger, in the finding and across jobs", () => {
    const evaluation = evaluateJob(aJobContext(DESIGNED));
    const [full, first] = evaluation.findings.airflow_setup.filter(
      (one) => one.ruleId === "airflow.cfm-per-ton",
    );
    // 1,200 cfm over three tons, 900 cfm over two; 300 to 400 cfm/ton is the company's range.
    expect(lineOf(evaluation, "cfm-per-ton").cells.set.value).toBe(400);
    expect(evaluation.facts).toMatchObject({ secondStageCfmPerTon: 400, firstStageCfmPerTon: 450 });
    expect([full?.statement, first?.statement].map((text) => /\d+ cfm\/ton/.exec(text ?? "")?.[0])).toEqual([
      "400 cfm/ton",
      "450 cfm/ton",
    ]);
  });

  test("a line of full capacity is not judged by the first stage's finding", () => {
    const evaluation = evaluateJob(aJobContext(DESIGNED));
    expect(evaluation.verdicts.airflow_setup).toBe("falls short");
    expect(lineOf(evaluation, "cfm-per-ton").verdict).toBe("meets");
  });

  test("the hours at or below the limit carry the review's verdict", () => {
    const log = {
      importId: "x",
      sourceName: "x",
      firstAt: "2026-08-01T00:00:00.000Z",
      lastAt: "2026-08-15T00:00:00.000Z",
      loggedHours: 336,
      limitPct: 55,
      dryHours: 168,
      hoursAboveLimit: 168,
      share50To60Pct: 40,
      meanRhPct: 55,
      meanDewPointF: null,
      longestWetSpellHours: 12,
      cyclesPerHour: null,
      medianRunMin: null,
      secondStageSharePct: null,
      outdoorFrom: "log" as const,
      analysis: null,
      askedWith: null,
    };
    expect(lineOf(evaluateJob(aJobContext(DESIGNED, { log })), "dry-hours").verdict).toBe("falls short");
  });
});

describe("readings of the first stage", () => {
  const evaluation = evaluateJob(aJobContext(READ_BOTH_STAGES, { measuredOn: "2026-08-01" }));

  test("are held against the airflow and static the first stage is set to", () => {
    const [, first] = startup(evaluation, "airflow.measured-against-design");
    // 810 cfm of the 900 cfm its setting gives.
    expect(first?.statement).toContain("0.90 of the design 900 cfm");
    expect(startup(evaluation, "airflow.static-against-design")[1]?.statement).toContain("0.50 in. w.c.");
  });

  test("borrow no current from full capacity, and ask for none", () => {
    expect(startup(evaluation, "startup.energy-balance").map((one) => one.statement.split(":")[0])).toEqual([
      "Full capacity",
    ]);
    for (const rule of ["startup.current", "startup.voltage"])
      expect(startup(evaluation, rule)).toHaveLength(1);
    expect(startup(evaluation, "startup.current")[0]?.inputs).toEqual(["ratedAmps"]);
  });

  test("every reading asked for is a field of the record", () => {
    const asked = evaluation.findings.startup_record.filter((one) => one.verdict === "not measured");
    expect(asked.filter((one) => one.inputs.length === 0).map((one) => one.ruleId)).toEqual([]);
  });
});

test("inputs no equation covers are a finding of their own stage, not a failure of the page", () => {
  const evaluation = evaluateJob(aJobContext(DESIGNED, { elevationFt: 100_000 }));
  expect(evaluation.findings.load_summary.map((one) => one.ruleId)).toEqual(["job.inputs-possible"]);
  expect(evaluation.findings.load_summary[0]?.statement).toContain("elevationFt");
});

test("a reason for attention is given once, however many stages it holds for", () => {
  const inputs = {
    ...DESIGNED,
    airflow_setup: { ...DESIGNED.airflow_setup, firstStageAirflowSetting: "high" },
    equipment_selection: { ...DESIGNED.equipment_selection, capacitySetting: "full" },
  };
  const limits = { ...aJobContext({}).limits, "airflow.cfmPerTonMax": 350 };
  const evaluation = evaluateJob(aJobContext(inputs, { limits }));
  const twice = evaluation.findings.airflow_setup.filter(
    (one) => one.ruleId === "airflow.cfm-per-ton" && one.verdict === "falls short",
  );
  expect(twice).toHaveLength(2);
  const records = { airflow_setup: {} } as unknown as JobRecords;
  const reasons = attentionReasons({ techs: [], startupDue: null }, records, evaluation);
  expect(reasons.filter((reason) => reason.includes(twice[0]?.title ?? "?"))).toHaveLength(1);
});
