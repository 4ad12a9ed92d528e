import { describe, expect, test } from "vitest";
import { emptyStage, readStoredInputs, STAGE_FIELDS, STAGES } from "@/lib/domain/stages";
import { stageSchema } from "@/lib/domain/stages/schema";

function problemsOf(result: {
  success: boolean;
  error?: { issues: { path: PropertyKey[]; message: string }[] };
}) {
  return (result.error?.issues ?? []).map((issue) => [issue.path.join("."), issue.message] as const);
}

describe("stage records", () => {
  test.each(STAGES)("%s with nothing entered may be saved as a draft", (stage) => {
    expect(stageSchema(stage).parse({})).toEqual(emptyStage(stage));
  });

  test.each(STAGES)("%s: every field has a label and every number a sensible range", (stage) => {
    for (const field of Object.values(STAGE_FIELDS[stage])) {
      expect(field.label.length).toBeGreaterThan(2);
      if (field.kind === "number") expect(field.max).toBeGreaterThan(field.min);
    }
  });

  test("relative humidity of 140 % is refused, naming field, unit and range", () => {
    const result = stageSchema("startup_record").safeParse({ secondReturnRhPct: "140" });
    expect(problemsOf(result)).toEqual([
      ["secondReturnRhPct", expect.stringMatching(/Return relative humidity: 140 %.*1 to 100 %/)],
    ]);
  });

  test("a wet bulb above its dry bulb is refused at the wet bulb", () => {
    const result = stageSchema("startup_record").safeParse({ firstReturnDbF: 75, firstReturnWbF: 76 });
    expect(problemsOf(result)).toEqual([
      ["firstReturnWbF", expect.stringContaining("cannot be above its dry bulb")],
    ]);
  });

  test("supply warmer than return asks, and is accepted once confirmed", () => {
    const readings = { secondReturnDbF: 75, secondSupplyDbF: 78 };
    expect(problemsOf(stageSchema("startup_record").safeParse(readings))[0]?.[0]).toBe("secondSupplyDbF");
    expect(
      stageSchema("startup_record").safeParse({ ...readings, supplyWarmerConfirmed: true }).success,
    ).toBe(true);
  });

  test("a field nobody knows is refused rather than dropped", () => {
    expect(stageSchema("airflow_setup").safeParse({ airflow: 3 }).success).toBe(false);
  });

  test("text typed with its unit is read as the number", () => {
    const parsed = stageSchema("load_summary").parse({ sensibleCoolingBtuh: "24,000 Btu/h", bedrooms: "3" });
    expect(parsed).toMatchObject({ sensibleCoolingBtuh: 24000, bedrooms: 3 });
  });

  test("inputs stored before a field existed open with that field empty; a newer version is refused", () => {
    expect(readStoredInputs("airflow_setup", 1, { designExternalStaticInWc: 0.5 })).toEqual({
      ...emptyStage("airflow_setup"),
      designExternalStaticInWc: 0.5,
    });
    expect(() => readStoredInputs("airflow_setup", 99, {})).toThrow(/newer version/);
  });
});
