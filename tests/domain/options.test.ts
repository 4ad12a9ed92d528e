import { describe, expect, test } from "vitest";
import type { PerformanceRow } from "@/lib/domain/catalog";
import { evaluateJob } from "@/lib/domain/evaluate";
import {
  optionContext,
  optionFigures,
  optionFromRecords,
  optionSchema,
  readStoredOption,
  STAGE_OF,
  stagesChangedBy,
} from "@/lib/domain/options";
import { STAGE_FIELDS } from "@/lib/domain/stages";
import { aJobContext, DESIGNED, TWO_STAGE } from "./a-job-context";

const SOURCE =
  "arithmetic shown beside each figure; balance point 34,000/20,000 Btu/h against 36,000 at 10 °F: 28.1 °F and 5.65 kW (computed)";

const heating = (outdoorDbF: number, totalBtuh: number): PerformanceRow => ({
  capacitySetting: "full",
  mode: "heating",
  outdoorDbF,
  enteringWbF: null,
  enteringDbF: 70,
  airflowCfm: 1_000,
  totalBtuh,
  sensibleBtuh: null,
  powerW: null,
});

const JOB = aJobContext({
  ...DESIGNED,
  load_summary: {
    ...DESIGNED.load_summary,
    ventilationCfm: 60,
    wetMildDewPointF: 75,
    wetMildDbF: 80,
    heatingBtuh: 36_000,
    outdoorHeatingDbF: 10,
    indoorHeatingDbF: 70,
  },
});
const AS_SELECTED = optionFromRecords(JOB.inputs);
const HEATED = {
  ...TWO_STAGE,
  performance: [...TWO_STAGE.performance, heating(17, 20_000), heating(47, 34_000)],
};
const figuresOf = (option = AS_SELECTED, model: typeof TWO_STAGE | null = HEATED) =>
  optionFigures(optionContext(JOB, option, model));

describe(`the figures of an option, ${SOURCE}`, () => {
  test("full capacity at design and the first stage in wet mild weather, as the maker's rows print them", () => {
    const { design, wetMild, cfmPerTon, airflowCfm } = figuresOf();
    expect(design).toMatchObject({
      known: true,
      value: { totalBtuh: 36_000, sensibleBtuh: 27_000, latentBtuh: 9_000 },
    });
    expect(wetMild).toMatchObject({
      known: true,
      value: { totalBtuh: 24_000, sensibleBtuh: 18_000, latentBtuh: 6_000 },
    });
    // 1,200 cfm over 36,000 / 12,000 tons.
    expect([airflowCfm, cfmPerTon]).toEqual([1_200, 400]);
  });

  test("water of mechanical outdoor air at the design dew point", () => {
    const { ventilationLbPerH } = figuresOf();
    // Saturation at 75 °F 0.4300 psia: W 0.62198·0.4300/14.266 = 0.01875 out, 0.62198·0.2150/14.481 = 0.00923 in; 4.5·60·0.00952 = 2.57 lb/h.
    expect(ventilationLbPerH.known && ventilationLbPerH.value).toBeCloseTo(2.57, 1);
  });

  test("balance point and auxiliary heat", () => {
    const { heating: balance } = figuresOf();
    expect(balance.known && balance.value.balancePointF).toBeCloseTo(28.1, 1);
    expect(balance.known && balance.value.auxiliaryAtDesignKw).toBeCloseTo(5.65, 2);
  });

  test("the same figures as the stage records once they say the same", () => {
    const now = evaluateJob({ ...JOB, model: HEATED });
    expect(figuresOf().shortfalls).toEqual(
      [...now.findings.equipment_selection, ...now.findings.airflow_setup].filter(
        (one) => one.verdict === "falls short",
      ),
    );
  });

  test("without equipment nothing is made up", () => {
    const { design, wetMild, heating: balance, sensitivities, cfmPerTon } = figuresOf(AS_SELECTED, null);
    expect([design.known, wetMild.known, balance.known, cfmPerTon]).toEqual([false, false, false, null]);
    expect(sensitivities).toEqual([]);
  });
});

describe(`what an option is sensitive to, ${SOURCE}`, () => {
  const of = (start: string) => figuresOf().sensitivities.find((one) => one.change.startsWith(start));

  test("5 % of the latent load moves its cover by the quotient", () => {
    // 9,000 / 6,500 = 138.46 %; / 6,825 = 131.87 %; / 6,175 = 145.75 %.
    expect(of("latent load +5 %")?.latentPoints).toBeCloseTo(131.868 - 138.462, 2);
    expect(of("latent load −5 %")?.latentPoints).toBeCloseTo(145.749 - 138.462, 2);
    expect(of("latent load +5 %")?.sensiblePoints).toBe(0);
    // 27,000 / 24,000 = 112.5 %; / 25,200 = 107.143 %.
    expect(of("sensible load +5 %")?.sensiblePoints).toBeCloseTo(107.143 - 112.5, 2);
  });

  test("the next setting of the fan is tried, and only those there are", () => {
    expect(of("one setting less air")?.change).toBe("one setting less air (“low”, 900 cfm)");
    expect(of("one setting more air")).toBeUndefined();
  });

  test("the strongest comes first: a change of the verdict, then the larger shift", () => {
    const sizes = figuresOf().sensitivities.map(
      (one) =>
        (one.verdictAfter === one.verdictBefore ? 0 : 1_000) +
        Math.max(Math.abs(one.latentPoints), Math.abs(one.sensiblePoints)),
    );
    expect(sizes).toEqual(sizes.toSorted((one, other) => other - one));
    expect(sizes[0]).toBeGreaterThan(5);
  });
});

describe("an option beside the records", () => {
  test("each field belongs to a record that has it", () => {
    for (const [field, stage] of Object.entries(STAGE_OF)) expect(STAGE_FIELDS[stage]).toHaveProperty(field);
  });

  test("what the records decide changes nothing; one thing changed touches one record", () => {
    expect(stagesChangedBy(JOB.inputs, AS_SELECTED)).toEqual([]);
    expect(stagesChangedBy(JOB.inputs, { ...AS_SELECTED, secondStageAirflowSetting: "low" })).toEqual([
      "airflow_setup",
    ]);
    expect(stagesChangedBy(JOB.inputs, { ...AS_SELECTED, ventilationCfm: 90 })).toEqual(["load_summary"]);
  });

  test("ventilation and controls stand where it says nothing; a system not chosen is not taken over", () => {
    const { inputs } = optionContext(
      JOB,
      { ...AS_SELECTED, ventilationCfm: null, capacitySetting: null },
      null,
    );
    expect(inputs.load_summary.ventilationCfm).toBe(60);
    expect(inputs.equipment_selection.capacitySetting).toBeNull();
  });

  test("a value that cannot be is refused, a newer version is not cut down", () => {
    expect(optionSchema.safeParse({ auxiliaryHeatKw: "900 kW" }).success).toBe(false);
    expect(optionSchema.safeParse({ unknown: 1 }).success).toBe(false);
    expect(() => readStoredOption(99, {})).toThrow("newer version");
    expect(readStoredOption(1, { capacitySetting: "full" })).toMatchObject({
      capacitySetting: "full",
      auxiliaryHeatKw: null,
    });
  });
});
