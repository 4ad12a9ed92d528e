import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { evaluateJob, type JobContext } from "@/lib/domain/evaluate";
import type { FieldDef } from "@/lib/domain/fields";
import { emptyStage, STAGE_FIELDS, STAGES, type StageInputs, type StageKey } from "@/lib/domain/stages";
import { singleSpeedCooler, twoStageHeatPump } from "@/seed/catalog/equipment";
import { asModel, FULL_JOB, HELD_COIL } from "../support/full-job";
import { firstUnlawful } from "../support/random-inputs";

const without = <S extends StageKey>(stage: S, ...fields: readonly (keyof StageInputs[S])[]): JobContext => ({
  ...FULL_JOB,
  inputs: {
    ...FULL_JOB.inputs,
    [stage]: {
      ...FULL_JOB.inputs[stage],
      ...Object.fromEntries(fields.map((field) => [field, null])),
    },
  },
});
const verdictOf = (context: JobContext, stage: StageKey, ruleId: string) =>
  evaluateJob(context).findings[stage].find((finding) => finding.ruleId === ruleId)?.verdict;

describe("what is missing is not measured, never zero", () => {
  test.each([
    ["load_summary", "occupants", "equipment_selection", "moisture.design-balance"],
    ["load_summary", "householdPintsPerDay", "equipment_selection", "moisture.wet-mild-balance"],
    ["load_summary", "groundPintsPerDay", "equipment_selection", "moisture.wet-mild-balance"],
    ["load_summary", "ventilationCfm", "equipment_selection", "moisture.design-balance"],
    ["load_summary", "wetMildDewPointF", "equipment_selection", "moisture.wet-mild-balance"],
    ["load_summary", "sensibleCoolingBtuh", "equipment_selection", "equipment.total-capacity"],
    ["load_summary", "heatingBtuh", "equipment_selection", "equipment.balance-point"],
    ["load_summary", "humidityLimitPct", "equipment_selection", "equipment.humidity-capability"],
    ["equipment_selection", "capacitySetting", "equipment_selection", "equipment.humidity-capability"],
    ["equipment_selection", "dehumidifierPintsPerDay", "equipment_selection", "moisture.wet-mild-balance"],
    ["startup_record", "pressureTestEndF", "startup_record", "refrigerant.pressure-test"],
    ["startup_record", "evacuationReachedMicrons", "startup_record", "refrigerant.evacuation-depth"],
    ["startup_record", "evacuationHoldMin", "startup_record", "refrigerant.evacuation-hold"],
    ["startup_record", "smallestRoomFt2", "startup_record", "refrigerant.flammable-charge"],
    ["startup_record", "lineSetLengthFt", "startup_record", "refrigerant.line-set"],
    ["startup_record", "secondAirflowCfm", "startup_record", "startup.total-capacity"],
  ] as const)("%s without %s: %s %s", (stage, field, said, ruleId) => {
    expect(verdictOf(without(stage, field as never), said, ruleId)).toBe("not measured");
  });

  test("a dehumidifier counts only with its capacity at the house's air", () => {
    const context = without("equipment_selection", "dehumidifierAtHousePintsPerDay");
    const said = evaluateJob(context).findings.equipment_selection.find(
      (finding) => finding.ruleId === "moisture.wet-mild-balance",
    );
    expect(said).toMatchObject({
      verdict: "not measured",
      inputs: ["dehumidifierAtHousePintsPerDay"],
    });
  });

  test("unknown leakage is left out and said so", () => {
    const said = evaluateJob(without("load_summary", "leakageCfm50")).findings.equipment_selection.find(
      (finding) => finding.ruleId === "moisture.design-balance",
    );
    expect(said?.statement).toContain("leakage is not known and not counted");
  });

  test("a circuit that was not opened is not asked for its vacuum", () => {
    const context = without(
      "startup_record",
      "circuitOpened",
      "pressureTestStartPsig",
      "pressureTestStartF",
      "pressureTestEndPsig",
      "pressureTestEndF",
      "evacuationReachedMicrons",
      "evacuationMicrons",
      "evacuationHoldMin",
      "makerHoldMin",
    );
    expect(verdictOf(context, "startup_record", "refrigerant.evacuation-depth")).toBeUndefined();
    const opened = {
      ...context,
      inputs: {
        ...context.inputs,
        startup_record: { ...context.inputs.startup_record, circuitOpened: true },
      },
    };
    expect(verdictOf(opened, "startup_record", "refrigerant.evacuation-depth")).toBe("not measured");
    expect(verdictOf(opened, "startup_record", "refrigerant.pressure-test")).toBe("not measured");
  });

  test("an empty job has no ledger figure, no share, no humidity and no map", () => {
    const inputs = Object.fromEntries(
      STAGES.map((stage) => [stage, emptyStage(stage)]),
    ) as unknown as StageInputs;
    const { ledger, results } = evaluateJob({ ...FULL_JOB, inputs, model: null, log: null, weather: null });
    expect([results.lowestRhPct, results.secondStageSharePct, results.capacityMap.known]).toEqual([
      null,
      null,
      false,
    ]);
    const figures = ledger.flatMap((line) => [line.cells.measured.value, line.cells.lived.value]);
    expect(figures.filter((value) => value !== null)).toEqual([]);
  });
});

test("a combination no equation covers is a finding of its stage, and the rest of the stage stands", () => {
  const context: JobContext = {
    ...FULL_JOB,
    inputs: {
      ...FULL_JOB.inputs,
      load_summary: { ...FULL_JOB.inputs.load_summary, outdoorHeatingDbF: 70, indoorHeatingDbF: 65 },
    },
  };
  const said = evaluateJob(context).findings.equipment_selection;
  const refused = said.find((finding) => finding.ruleId === "job.inputs-possible");
  expect(refused?.verdict).toBe("not measured");
  expect(refused?.statement).toMatch(/designF|zeroLoadF/);
  expect(said.find((finding) => finding.ruleId === "equipment.total-capacity")?.verdict).toBe("meets");
});

/** What a person may enter in a field: within its range, or nothing. */
function entered(field: FieldDef): fc.Arbitrary<unknown> {
  const given = (): fc.Arbitrary<unknown> => {
    switch (field.kind) {
      case "number":
        return fc.double({ min: field.min, max: field.max, noNaN: true });
      case "choice":
        return fc.constantFrom(...field.options.map((option) => option.value));
      case "yes-no":
        return fc.boolean();
      case "reference":
        return fc.constantFrom(
          "A",
          "B",
          "low",
          "high",
          "tap 1",
          "2 tons",
          "3 tons",
          "2.5 tons",
          "psychrometer",
          "gauges",
        );
      case "text":
      case "date":
        return fc.constant("2026-07-31");
    }
  };
  return fc.oneof({ weight: 5, arbitrary: given() }, { weight: 1, arbitrary: fc.constant(null) });
}

const MODELS = [HELD_COIL, asModel(twoStageHeatPump), asModel(singleSpeedCooler)];

test("evaluateJob never throws and never shows a number that is none, whatever is entered", () => {
  const inputs = fc.record(
    Object.fromEntries(
      STAGES.map((stage) => [
        stage,
        fc.record(
          Object.fromEntries(
            Object.entries(STAGE_FIELDS[stage]).map(([key, field]) => [key, entered(field)]),
          ),
        ),
      ]),
    ),
  ) as unknown as fc.Arbitrary<StageInputs>;
  const elevation = fc.option(fc.double({ min: -1_300, max: 15_000, noNaN: true }), { nil: null, freq: 8 });
  fc.assert(
    fc.property(
      inputs,
      fc.option(fc.constantFrom(...MODELS), { nil: null, freq: 8 }),
      elevation,
      (given, model, elevationFt) => {
        const { findings, ledger, results } = evaluateJob({ ...FULL_JOB, inputs: given, model, elevationFt });
        expect(
          firstUnlawful(
            Object.values(findings)
              .flat()
              .map((one) => [one.statement, one.figures]),
          ),
        ).toBeNull();
        expect(firstUnlawful(ledger)).toBeNull();
        expect(firstUnlawful(results.capacityMap)).toBeNull();
      },
    ),
    { seed: 20261125, numRuns: 300 },
  );
});

test("nor when single fields of a full job are changed or left out", () => {
  const change = fc.constantFrom(...STAGES).chain((stage) =>
    fc.constantFrom(...Object.keys(STAGE_FIELDS[stage])).chain((key) => {
      const field = STAGE_FIELDS[stage][key];
      return field ? entered(field).map((value) => ({ stage, key, value })) : fc.constant(null);
    }),
  );
  fc.assert(
    fc.property(fc.array(change, { minLength: 1, maxLength: 4 }), (changes) => {
      const inputs: Record<string, unknown> = { ...FULL_JOB.inputs };
      for (const one of changes) {
        if (one) inputs[one.stage] = { ...(inputs[one.stage] as object), [one.key]: one.value };
      }
      const { findings, ledger } = evaluateJob({ ...FULL_JOB, inputs: inputs as unknown as StageInputs });
      expect(
        firstUnlawful(
          Object.values(findings)
            .flat()
            .map((one) => [one.statement, one.figures]),
        ),
      ).toBeNull();
      expect(firstUnlawful(ledger)).toBeNull();
    }),
    { seed: 20261126, numRuns: 300 },
  );
});
