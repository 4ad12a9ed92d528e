import { expect, test } from "vitest";
import { evaluateJob } from "@/lib/domain/evaluate";
import { saidOf } from "@/lib/domain/startup-said";
import { startupWalk } from "@/lib/domain/startup-walk";
import { FULL_JOB } from "../support/full-job";

/** The readings of a whole startup, with twice the airflow that full capacity can have. */
const startup = { ...FULL_JOB.inputs.startup_record, secondAirflowCfm: 1_400 };
const job = { ...FULL_JOB, inputs: { ...FULL_JOB.inputs, startup_record: startup } };
const evaluation = evaluateJob(job);
const at = (id: string, values: object = startup) => {
  const screen = startupWalk(job, startup).find((one) => one.id === id) ?? expect.fail(id);
  return saidOf(evaluation, screen, values as typeof startup);
};

test("what cannot be right at one stage is asked beside its readings, not beside the other stage's", () => {
  expect(evaluation.questions.every((one) => one.id.startsWith("second."))).toBe(true);
  expect(at("secondAirflowCfm").asked).not.toEqual([]);
  expect(at("secondReturnDbF").asked).not.toEqual([]);
  expect([at("firstAirflowCfm").asked, at("firstReturnDbF").asked]).toEqual([[], []]);
});

test("the worst stands first, and nothing is said of a screen that is empty", () => {
  const order: readonly (string | null)[] = ["falls short", "can't tell", "meets", null];
  const places = at("secondAirflowCfm").findings.map((one) => order.indexOf(one.verdict));
  expect(places[0]).toBe(0);
  expect(places).toEqual(places.toSorted());
  expect(at("secondAirflowCfm", { secondAirflowCfm: null })).toEqual({ findings: [], asked: [] });
});
