import { describe, expect, it, test } from "vitest";
import {
  type AirflowInput,
  type AirflowStage,
  airflowFindings,
  airflowLimits,
  airflowRules,
  type Measured,
  verdictOnMeasured,
} from "@/lib/engineering/airflow";
import { type Finding, verdictOnInterval } from "@/lib/engineering/findings";
import { seedLimits } from "@/lib/engineering/limit-definition";

const DESIGN_SOURCE = "±15 % good, ±25 % fair, ANSI/RESNET/ICC 310 [M+ recalled]";
const STATIC_SOURCE = "static pressure, ANSI/ACCA 5 QI-2015 [M+ recalled]";
const FRICTION_SOURCE = "friction rate, acceptable 0.06 to 0.18, ANSI/ACCA 1 Manual D [M+ recalled]";
const PER_TON_SOURCE = "airflow per ton of capacity as set, company range 300 to 400 [P practice]";

const LIMITS = seedLimits(airflowLimits);
const exact = (value: number): Measured => ({ value, uncertainty: 0 });

const EMPTY: AirflowStage = {
  stage: "First stage",
  airflow: null,
  designCfm: null,
  capacityAsSetBtuh: null,
  leavingDewPointF: null,
  coilTemperature: null,
  makersMinimumCfm: null,
  externalStatic: null,
  designStaticInWc: null,
  maximumStaticInWc: null,
  fanPower: null,
};

function findingOf(rule: keyof typeof airflowRules, input: Partial<AirflowInput>): Finding {
  const all = airflowFindings({ stages: [], ducts: null, electricHeat: null, ...input }, LIMITS);
  const found = all.find((finding) => finding.ruleId === airflowRules[rule].id);
  if (found === undefined) throw new Error(`no finding for ${rule}`);
  return found;
}
const stage = (rule: keyof typeof airflowRules, values: Partial<AirflowStage>) =>
  findingOf(rule, { stages: [{ ...EMPTY, ...values }] });

test("nothing entered: every finding is not measured and names what is missing", () => {
  const findings = airflowFindings(
    {
      stages: [EMPTY],
      ducts: { availableInWc: null, totalEffectiveLengthFt: null },
      electricHeat: { airflow: null, electricHeatMinimumCfm: null },
    },
    LIMITS,
  );
  // A flow plate is asked about only where one was used: tests/engineering/airflow/flow-plate.test.ts.
  const { flowPlate: _, ...asked } = airflowRules;
  expect(findings.map((one) => one.ruleId).toSorted()).toEqual(
    Object.values(asked)
      .map((rule) => rule.id)
      .toSorted(),
  );
  for (const finding of findings) {
    expect(finding.verdict).toBe("not measured");
    expect(finding.inputs.length).toBeGreaterThan(0);
    expect(finding.nextStep).not.toBeNull();
  }
  expect(findings[0]?.inputs).toEqual(["stages.0.airflow", "stages.0.designCfm"]);
});

describe(`airflow against design: ${DESIGN_SOURCE}`, () => {
  it.each([
    [850, "meets", "good"],
    [849, "falls short", "fair, not good"],
    [1_150, "meets", "good"],
    [1_250, "falls short", "fair, not good"],
    [1_251, "falls short", "outside fair"],
    [749, "falls short", "outside fair"],
  ])("%d of 1,000 cfm → %s, %s", (value, verdict, grade) => {
    const finding = stage("measuredAgainstDesign", { airflow: exact(value), designCfm: 1_000 });
    expect(finding.verdict).toBe(verdict);
    expect(finding.statement).toContain(`(${grade};`);
  });

  it("says which way to turn it: too little air up, too much air down; 749 of 1,000 is 0.75", () => {
    const low = stage("measuredAgainstDesign", { airflow: exact(749), designCfm: 1_000 });
    expect(low.nextStep).toMatch(/next higher airflow setting/);
    expect(low.figures.find(({ label }) => label === "Share of design")?.value).toBeCloseTo(0.749, 9);
    const high = stage("measuredAgainstDesign", { airflow: exact(1_251), designCfm: 1_000 });
    expect(high.nextStep).toMatch(/next lower airflow setting/);
    expect(stage("measuredAgainstDesign", { airflow: exact(1_000), designCfm: 1_000 }).nextStep).toBeNull();
  });

  it("an uncertain reading near the edge can't tell, and says what would: 880 ± 50 is 30 above 850, which itself passes", () => {
    const finding = stage("measuredAgainstDesign", {
      airflow: { value: 880, uncertainty: 50 },
      designCfm: 1_000,
    });
    expect(finding.verdict).toBe("can't tell");
    expect(finding.nextStep).toContain("±30 cfm");
    expect(finding.statement).toContain("880 ± 50 cfm");
  });

  it("the accuracy it names does decide: 830 ± 50 is 20 below 850, and ±20 would still touch the limit", () => {
    const judge = (uncertainty: number) =>
      stage("measuredAgainstDesign", { airflow: { value: 830, uncertainty }, designCfm: 1_000 });
    expect(judge(50).nextStep).toContain("±19 cfm");
    expect(judge(19).verdict).toBe("falls short");
    expect(judge(20).verdict).toBe("can't tell");
  });

  it("says when the accuracy is not known, and gives no verdict near the limit (10 % band)", () => {
    const near = stage("measuredAgainstDesign", {
      airflow: { value: 900, uncertainty: null },
      designCfm: 1_000,
    });
    expect(near.verdict).toBe("can't tell");
    expect(near.statement).toContain("accuracy of the instrument not known");
    const clear = stage("measuredAgainstDesign", {
      airflow: { value: 1_000, uncertainty: null },
      designCfm: 1_000,
    });
    expect(clear.verdict).toBe("meets");
  });
});

describe(STATIC_SOURCE, () => {
  it.each([
    [0.5, "meets"],
    [0.51, "falls short"],
  ])("%d against the maker's maximum 0.50 → %s", (value, verdict) => {
    const finding = stage("staticAgainstMaximum", {
      externalStatic: exact(value),
      maximumStaticInWc: 0.5,
    });
    expect(finding.verdict).toBe(verdict);
  });

  it.each([
    // 25 % of 0.30 is 0.075, so 0.10 counts; 25 % of 0.80 is 0.20.
    [0.39, 0.3, "meets"],
    [0.41, 0.3, "falls short"],
    [0.99, 0.8, "meets"],
    [1.01, 0.8, "falls short"],
    [0.59, 0.8, "falls short"],
  ])("%d against design %d → %s", (value, designStaticInWc, verdict) => {
    const finding = stage("staticAgainstDesign", {
      externalStatic: exact(value),
      designStaticInWc,
    });
    expect(finding.verdict).toBe(verdict);
  });
});

describe(FRICTION_SOURCE, () => {
  it.each([
    [0.18, 240, "meets", /^$/],
    [0.12, 240, "falls short", /Shorten the longest run/],
    [0.5, 240, "falls short", /lower fan setting or smaller ducts/],
    [-0.02, 240, "falls short", /filter or coil with less drop/],
  ])("%d in. w.c. over %d ft → %s", (availableInWc, totalEffectiveLengthFt, verdict, nextStep) => {
    const finding = findingOf("frictionRate", { ducts: { availableInWc, totalEffectiveLengthFt } });
    expect(finding.verdict).toBe(verdict);
    expect(finding.nextStep ?? "").toMatch(nextStep);
  });
});

describe(PER_TON_SOURCE, () => {
  it.each([
    // 900 cfm: 450/ton on 24,000, 360 on 30,000, 270 on 40,000.
    [24_000, "falls short"],
    [30_000, "meets"],
    [40_000, "falls short"],
  ])("900 cfm on %d Btu/h → %s", (capacityAsSetBtuh, verdict) => {
    const finding = stage("cfmPerTon", {
      airflow: exact(900),
      capacityAsSetBtuh,
      leavingDewPointF: 52.4,
    });
    expect(finding.verdict).toBe(verdict);
    expect(finding.statement).toContain("dew point of 52.4 °F");
  });
});

test("airflow per ton carries its uncertainty: 975 ± 60 cfm on 2.5 tons is 390 ± 24, and 25 cfm would settle 400", () => {
  const finding = stage("cfmPerTon", {
    airflow: { value: 975, uncertainty: 60 },
    capacityAsSetBtuh: 30_000,
    leavingDewPointF: null,
  });
  expect(finding.verdict).toBe("can't tell");
  expect(finding.figures[0]).toMatchObject({ value: 390, uncertainty: 24 });
  // 10 cfm/ton to the limit, on 2.5 tons: 25 cfm, rounded down to one digit so that it surely decides.
  expect(finding.nextStep).toContain("±20 cfm");
});

describe("low airflow guards", () => {
  it.each([
    [800, "meets"],
    [799, "falls short"],
  ])("%d cfm against the maker's minimum 800 → %s", (value, verdict) => {
    const finding = stage("makersMinimum", { airflow: exact(value), makersMinimumCfm: 800 });
    expect(finding.verdict).toBe(verdict);
  });

  it("electric heat minimum carries a caution", () => {
    const finding = findingOf("electricHeatMinimum", {
      electricHeat: { airflow: exact(900), electricHeatMinimumCfm: 1_000 },
    });
    expect(finding.verdict).toBe("falls short");
    expect(finding.caution).toContain("limit switch");
  });

  it.each([
    [33, 0.5, "meets"],
    [31, 0.5, "falls short"],
    [32.3, 0.5, "can't tell"],
  ])("coil at %d ± %d °F against frost at 32 °F → %s", (value, uncertainty, verdict) => {
    const finding = stage("coilFrost", { coilTemperature: { value, uncertainty } });
    expect(finding.verdict).toBe(verdict);
  });
});

test("fan power: 500 ± 10 W on 1,000 ± 50 cfm is 0.50 ± √(0.01² + 0.025²) = 0.027 W/cfm, grade II", () => {
  const finding = stage("fanEfficacy", {
    airflow: { value: 1_000, uncertainty: 50 },
    fanPower: { value: 500, uncertainty: 10 },
  });
  expect(finding.verdict).toBe("meets");
  expect(finding.statement).toContain("grade II");
  expect(finding.figures[0]?.uncertainty).toBeCloseTo(0.02693, 4);
});

test("with known accuracy the verdict is that of the interval", () => {
  const range = { min: 3, max: 9 };
  for (const value of [2, 3, 4, 8, 9, 10])
    for (const uncertainty of [0, 0.5, 2])
      expect(verdictOnMeasured({ value, uncertainty }, range, 10)).toBe(
        verdictOnInterval(value, uncertainty, range),
      );
});

test("unknown accuracy: the band is of the limit or, when larger, of half the range: 10 % of 5 around 0 … 10", () => {
  const range = { min: 0, max: 10 };
  expect(verdictOnMeasured({ value: 0.4, uncertainty: null }, range, 10)).toBe("can't tell");
  expect(verdictOnMeasured({ value: 0.6, uncertainty: null }, range, 10)).toBe("meets");
  expect(verdictOnMeasured({ value: -0.6, uncertainty: null }, range, 10)).toBe("falls short");
  // One-sided: 10 % of 0.50.
  const most = { min: null, max: 0.5 };
  expect(verdictOnMeasured({ value: 0.46, uncertainty: null }, most, 10)).toBe("can't tell");
  expect(verdictOnMeasured({ value: 0.44, uncertainty: null }, most, 10)).toBe("meets");
});

test("a reading out of range is refused with its field", () => {
  expect(() => stage("coilFrost", { coilTemperature: exact(400) })).toThrow("stages.0.coilTemperature");
  expect(() => stage("makersMinimum", { makersMinimumCfm: Number.NaN })).toThrow("makersMinimumCfm");
});

test("every rule names limits that exist and this test", () => {
  for (const rule of Object.values(airflowRules)) {
    for (const key of rule.limits) expect(Object.keys(airflowLimits)).toContain(key);
    expect(rule.id.startsWith("airflow.")).toBe(true);
  }
});
