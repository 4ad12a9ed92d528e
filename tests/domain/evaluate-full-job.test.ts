import { describe, expect, test } from "vitest";
import { evaluateJob } from "@/lib/domain/evaluate";
import { RULE_BOOK } from "@/lib/domain/rule-book";
import { STAGE_FIELDS, STAGES, type StageKey } from "@/lib/domain/stages";
import type { Finding } from "@/lib/engineering/findings";
import { FULL_JOB } from "../support/full-job";

const SOURCE =
  "the worked examples of the engineering tests and arithmetic shown beside each value (published and computed)";

const evaluation = evaluateJob(FULL_JOB);
const one = (stage: StageKey, ruleId: string): Finding => {
  const found = evaluation.findings[stage].find((finding) => finding.ruleId === ruleId);
  if (!found) throw new Error(`${stage} says nothing of ${ruleId}.`);
  return found;
};
const figure = (finding: Finding, label: RegExp): number =>
  finding.figures.find((candidate) => label.test(candidate.label))?.value ?? Number.NaN;

describe(`a whole job, ${SOURCE}`, () => {
  test("ventilation: 0.03·2,000 + 7.5·4 = 90 cfm; 64 cfm and a credit of 0.052·0.5·1,000 = 26 cfm just cover it", () => {
    const said = one("load_summary", "load.ventilation");
    expect(figure(said, /need/)).toBeCloseTo(90, 9);
    expect(figure(said, /credit/)).toBeCloseTo(26, 9);
    expect(said.verdict).toBe("meets");
  });

  test("leakage area of 1,000 cfm at 50 Pa is about 0.0552 · 1,000 = 55.2 in²", () => {
    expect(Math.abs(figure(one("load_summary", "load.leakage"), /area/) - 55.2)).toBeLessThan(0.3);
  });

  test("two tons set of three: the ceiling is 36,000 · 2/3 = 24,000 Btu/h, one time the load of 19,000 + 5,000", () => {
    const full = evaluation.results.equipment.full;
    expect(full.known && full.value.totalBtuh).toBeCloseTo(24_000, 6);
    expect(figure(one("equipment_selection", "equipment.total-capacity"), /over load/)).toBeCloseTo(1, 9);
    expect(evaluation.facts.sizeRatio).toBeCloseTo(1, 9);
  });

  test("700 cfm over two tons is 350 cfm per ton", () => {
    expect(evaluation.results.cfmPerTon.set).toBeCloseTo(350, 9);
    expect(evaluation.facts.secondStageCfmPerTon).toBeCloseTo(350, 9);
  });

  test("external static is two readings of one manometer: 0.22 + 0.28 in. w.c. to ± (2·0.005 + 1 %), U = 2·0.015/√3", () => {
    const said = evaluation.findings.startup_record.flatMap((finding) => finding.figures);
    const shown = said.filter(({ label }) => /static/i.test(label) && !/maximum|design/i.test(label));
    expect(shown.find(({ value }) => Math.abs(value - 0.5) < 1e-9)?.uncertainty).toBeCloseTo(
      (2 * 0.015) / Math.sqrt(3),
      6,
    );
  });

  test("balance point: lines 16,500 + 250(t − 17) and 580(70 − t) meet at 34.2 °F; at 20 °F 3.44 kW are missing, 5 are there", () => {
    // 580·70 − 16,500 + 250·17 = 28,350; ÷ 830 = 34.157. At 20 °F: (29,000 − 17,250) ÷ 3,412 = 3.4437.
    const said = one("equipment_selection", "equipment.balance-point");
    expect(figure(said, /Balance/)).toBeCloseTo(34.157, 2);
    expect(figure(said, /Auxiliary/)).toBeCloseTo(3.4437, 3);
    expect(said.verdict).toBe("meets");
  });

  test("water given off inside: 4 · 0.11 pint/h and 9 pint/day at 1.043 lb a pint", () => {
    // 1 gal of water 8.34 lb, 8 pints: 1.0425 lb. 0.44 · 1.0425 + 9 · 1.0425 ÷ 24 = 0.4587 + 0.3909 = 0.8496 lb/h.
    const design = one("equipment_selection", "moisture.design-balance");
    expect(Math.abs(figure(design, /Household/) - 0.85)).toBeLessThan(0.005);
  });

  test("wet and mild: 90 cfm at 72 °F dew point bring about 4.5 · 90 · ΔW; the dehumidifier takes 95 pint/day = 4.13 lb/h", () => {
    // W at 72 °F dew point 0.0170, at 75 °F and 50 % 0.0093 (ASHRAE chart, recalled); 90 cfm at 76 °F: 4.5 · 90 · 0.0077 = 3.1.
    const mild = one("equipment_selection", "moisture.wet-mild-balance");
    expect(Math.abs(figure(mild, /Outdoor/) - 3.1)).toBeLessThan(0.2);
    expect(Math.abs(figure(mild, /Removal/) - 4.126)).toBeLessThan(0.01);
    expect(mild.verdict).toBe("meets");
    expect(figure(mild, /Net/)).toBeCloseTo(
      figure(mild, /Household/) + figure(mild, /Outdoor/) - figure(mild, /Removal/),
      9,
    );
  });

  test("the house settles where the coil's latent over sensible equals the load's 5,000 over 19,000", () => {
    const said = one("equipment_selection", "equipment.humidity-capability");
    expect(said.verdict).toBe("meets");
    expect(evaluation.results.lowestRhPct).toBeGreaterThan(40);
    expect(evaluation.results.lowestRhPct).toBeLessThan(55);
  });

  test("a promise below that falls short", () => {
    const strict = evaluateJob({
      ...FULL_JOB,
      inputs: {
        ...FULL_JOB.inputs,
        load_summary: { ...FULL_JOB.inputs.load_summary, humidityLimitPct: 40 },
      },
    });
    const said = strict.findings.equipment_selection.find(
      ({ ruleId }) => ruleId === "equipment.humidity-capability",
    );
    expect(said?.verdict).toBe("falls short");
    expect(said?.nextStep).toMatch(/colder coil/);
  });

  test("cooling takes water as long as the sensible load asks: at half the capacity's sensible half its water, at more all of it", () => {
    const { full } = evaluation.results.equipment;
    if (!full.known) throw new Error("no capacity");
    const { sensibleBtuh, moistureLbPerH } = full.value;
    const removalAt = (sensibleCoolingBtuh: number) => {
      const found = evaluateJob({
        ...FULL_JOB,
        inputs: {
          ...FULL_JOB.inputs,
          load_summary: { ...FULL_JOB.inputs.load_summary, sensibleCoolingBtuh },
          equipment_selection: { ...FULL_JOB.inputs.equipment_selection, dehumidifierPintsPerDay: 0 },
        },
      }).findings.equipment_selection.find(({ ruleId }) => ruleId === "moisture.design-balance");
      return found === undefined ? Number.NaN : figure(found, /Removal/);
    };
    expect(removalAt(sensibleBtuh / 2)).toBeCloseTo(moistureLbPerH / 2, 9);
    expect(removalAt(sensibleBtuh * 1.2)).toBeCloseTo(moistureLbPerH, 9);
  });

  test("line set: (50 − 15) · 0.6 = +21 oz; charge 7.2 lb + 21 ÷ 16 = 8.51 lb", () => {
    expect(figure(one("startup_record", "refrigerant.line-set"), /asked/)).toBeCloseTo(21, 9);
    expect(figure(one("startup_record", "refrigerant.flammable-charge"), /^charge/)).toBeCloseTo(8.5125, 9);
  });

  test("flammable charge: 3.861 kg ÷ (2.5 · 0.296^1.25 · 1.829 m), squared, is 14.9 m² = 161 ft²", () => {
    // 0.296^1.25 = 0.21833; 2.5 · 0.21833 · 1.8288 = 0.99821; 3.8612 ÷ 0.99821 = 3.8681; squared 14.963 m² = 161.06 ft².
    const said = one("startup_record", "refrigerant.flammable-charge");
    expect(Math.abs(figure(said, /smallest/) - 161.06)).toBeLessThan(0.2);
    expect([said.verdict, said.caution]).toEqual(["meets", expect.stringMatching(/A2L/)]);
  });

  test("nitrogen: (450 + 14.696) · 543.67 ÷ 541.67 − 14.696 = 451.7 psig, so 451.5 is a drop of 0.2 psi", () => {
    const said = one("startup_record", "refrigerant.pressure-test");
    expect(figure(said, /expected/)).toBeCloseTo(451.716, 2);
    expect([said.verdict, said.caution]).toEqual(["meets", expect.stringMatching(/nitrogen only/)]);
  });

  test("vacuum: 210 and 320 microns are not above 500, and 15 minutes are not under 10", () => {
    expect(one("startup_record", "refrigerant.evacuation-depth").verdict).toBe("meets");
    expect(one("startup_record", "refrigerant.evacuation-hold").verdict).toBe("meets");
  });

  test("stepping back to first stage is told with the model's own settling time of 8 minutes", () => {
    const said = one("control_setup", "equipment.stage-drop");
    expect(said.verdict).toBeNull();
    expect(said.statement).toMatch(/the compressor needs 8 minutes/);
    expect(figure(said, /Water/)).toBeGreaterThan(0);
  });

  test("no stage says that its inputs cannot be computed with", () => {
    const refused = STAGES.flatMap((stage) => evaluation.findings[stage]).filter(
      (finding) => finding.ruleId === "job.inputs-possible",
    );
    expect(refused).toEqual([]);
  });
});

describe("the capacity map", () => {
  const map = evaluation.results.capacityMap;
  const cells = map.known ? map.value.cells : [];

  test("has every airflow setting with every capacity setting", () => {
    expect(cells.map((cell) => `${cell.airflowSetting} ${cell.capacitySetting}`)).toEqual(
      ["A", "B", "C", "D", "E"].flatMap((airflow) =>
        ["2 tons", "2.5 tons", "3 tons"].map((capacity) => `${airflow} ${capacity}`),
      ),
    );
  });

  test("shows in the cell as set what the selection is judged by", () => {
    const full = evaluation.results.equipment.full;
    const asSet = cells.find((cell) => cell.airflowSetting === "B" && cell.capacitySetting === "2 tons");
    expect(asSet?.airflowCfm).toBe(700);
    expect(asSet?.totalBtuh).toBeCloseTo(full.known ? full.value.totalBtuh : Number.NaN, 6);
    expect(asSet?.fit).toBe("fits");
  });

  test("takes less and dries more per Btu with less airflow, and says why where it cannot tell", () => {
    const [a, b, c] = ["A", "B", "C"].map((setting) =>
      cells.find((cell) => cell.airflowSetting === setting && cell.capacitySetting === "3 tons"),
    );
    expect(a?.totalBtuh ?? 0).toBeLessThan(b?.totalBtuh ?? 0);
    expect(b?.totalBtuh ?? 0).toBeLessThan(c?.totalBtuh ?? 0);
    expect(a?.sensibleRatio ?? 1).toBeLessThan(c?.sensibleRatio ?? 0);
    for (const cell of cells) expect(cell.reason.length).toBeGreaterThan(10);
    for (const cell of cells) expect(cell.fit === null).toBe(cell.totalBtuh === null);
  });
});

describe("ledger and rules", () => {
  test("every cell's evidence is a field of its stage record", () => {
    const evidence = evaluation.ledger.flatMap((line) =>
      Object.values(line.cells).flatMap((cell) => (cell.evidence ? [cell.evidence] : [])),
    );
    expect(evidence.length).toBeGreaterThan(20);
    const wrong = evidence.filter(({ stage, field }) => field !== null && !(field in STAGE_FIELDS[stage]));
    expect(wrong).toEqual([]);
  });

  test("the charge stands in it, beside the maker's targets of 9 and 10 °F", () => {
    const designed = (key: string) =>
      evaluation.ledger.find((line) => line.key === key)?.cells.designed.value;
    expect([designed("subcooling"), designed("superheat")]).toEqual([9, 10]);
    const measured = evaluation.ledger.find((line) => line.key === "subcooling")?.cells.measured;
    expect(measured?.value).toBeCloseTo(
      figure(one("startup_record", "refrigerant.subcooling"), /ubcooling/),
      9,
    );
    expect(measured?.verdict).toBe(one("startup_record", "refrigerant.subcooling").verdict);
  });

  test("every input a finding names is a field of its stage record or of the load summary", () => {
    const wrong = STAGES.flatMap((stage) =>
      evaluation.findings[stage].flatMap((finding) =>
        finding.inputs
          .filter((input) => !(input in STAGE_FIELDS[stage]) && !OUTSIDE_THE_RECORDS.has(input))
          .map((input) => `${stage} ${finding.ruleId}: ${input}`),
      ),
    );
    expect(wrong).toEqual([]);
  });

  test("every rule that speaks is in the rule book, with the same title", () => {
    const book = new Map(RULE_BOOK.flatMap((chapter) => chapter.rules).map((rule) => [rule.id, rule.title]));
    const spoken = STAGES.flatMap((stage) => evaluation.findings[stage]);
    expect(spoken.length).toBeGreaterThan(60);
    expect(spoken.filter((finding) => book.get(finding.ruleId) !== finding.title)).toEqual([]);
  });

  test("a fan that runs on says what it dries back off the coil, with the coil as the forecast assumes it", () => {
    // Half the load, or the afternoon would be one run without a rest.
    const inputs = {
      ...FULL_JOB.inputs,
      load_summary: { ...FULL_JOB.inputs.load_summary, sensibleCoolingBtuh: 9_500, latentCoolingBtuh: 2_500 },
      control_setup: { ...FULL_JOB.inputs.control_setup, fanRunOnAfterCoolingS: 300 },
    };
    const said = evaluateJob({ ...FULL_JOB, inputs }).findings.control_setup.find(
      ({ ruleId }) => ruleId === "controls.fan-run-on",
    );
    expect(said?.statement).toMatch(/lb\/h dried back off the coil.*the coil as the forecast assumes it/);
    const given = said?.figures.find(({ label }) => /^dried back off the coil, as set/.test(label))?.value;
    expect(given).toBeGreaterThan(0);
    // No more than was condensed: the afternoon's water over its hours.
    const condensed = said?.figures.find(({ label }) => /^water condensed, as set/.test(label))?.value;
    expect(given).toBeLessThan(condensed ?? 0);
  });
});

/** Of the home and its weather file. */
const OUTSIDE_THE_RECORDS: ReadonlySet<string> = new Set([
  "elevationFt",
  "weatherCoolingDbF",
  "weatherHeatingDbF",
]);
