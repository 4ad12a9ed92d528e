import { describe, expect, test } from "vitest";
import { readDeviations, withDeviation } from "@/lib/domain/deviations";
import { evaluateJob } from "@/lib/domain/evaluate";
import { aJobContext, DESIGNED } from "./a-job-context";

describe("the reason for departing from a limit", () => {
  test("one line a rule; said again it is replaced, empty it is gone", () => {
    const one = withDeviation(null, "airflow.cfm-per-ton", "Long ducts,\n no other fan");
    expect(one).toBe("airflow.cfm-per-ton: Long ducts, no other fan");
    const two = withDeviation(one, "equipment.latent", "Owner's wish: see note");
    expect(readDeviations(two)).toEqual({
      "airflow.cfm-per-ton": "Long ducts, no other fan",
      "equipment.latent": "Owner's wish: see note",
    });
    expect(withDeviation(withDeviation(two, "equipment.latent", " "), "airflow.cfm-per-ton", "")).toBeNull();
  });

  test("is said with the finding that falls short; the verdict does not change", () => {
    const reasoned = {
      ...DESIGNED,
      airflow_setup: { ...DESIGNED.airflow_setup, deviations: "airflow.cfm-per-ton: Long ducts" },
    };
    const before = evaluateJob(aJobContext(DESIGNED));
    const after = evaluateJob(aJobContext(reasoned));
    // 900 cfm on two tons is 450 cfm/ton, over the company's 400: the first stage falls short, the full one meets.
    const [full, first] = after.findings.airflow_setup.filter((one) => one.ruleId === "airflow.cfm-per-ton");
    expect(first?.statement).toContain("Recorded reason: Long ducts");
    expect(full?.statement).not.toContain("Recorded reason");
    expect(after.verdicts).toEqual(before.verdicts);
    expect(after.findings.airflow_setup.map((one) => one.verdict)).toEqual(
      before.findings.airflow_setup.map((one) => one.verdict),
    );
  });
});
