import { describe, expect, test } from "vitest";
import { limitHistory, limitViews } from "@/lib/services/rules";

const SEED = { kind: "text", text: "seed value" };
const at = (revision: number, values: Readonly<Record<string, number>>) => ({
  revision,
  values,
  at: "2026-07-31T12:00:00.000Z",
  byName: "Sample Owner",
  reason: `reason ${revision}`,
});

describe("limits as the Rules page shows them", () => {
  test("the company's own value is in force, beside its seed", () => {
    const own = limitViews({ "airflow.goodPct": 12 }).find(({ key }) => key === "airflow.goodPct");
    expect(own).toMatchObject({ inForce: 12, seed: 15, isOwn: true, problem: null });
    const seed = limitViews({}).find(({ key }) => key === "airflow.goodPct");
    expect(seed).toMatchObject({ inForce: 15, isOwn: false });
  });

  test("a value that cannot be used is shown as it is stored, with what is wrong", () => {
    const wrong = limitViews({ "airflow.goodPct": 99 }).find(({ key }) => key === "airflow.goodPct");
    expect(wrong).toMatchObject({ inForce: 99, problem: expect.stringContaining("not from 1 to 30 %") });
  });
});

test("each change tells from what to what; not set is the seed value", () => {
  const history = limitHistory([
    at(3, {}),
    at(2, { "airflow.goodPct": 10 }),
    at(1, { "airflow.goodPct": 12 }),
  ]);
  const told = history.map(({ revision, changes }) => [
    revision,
    changes.map(({ before, after }) =>
      [before, after].map((value) => (value?.kind === "quantity" ? value.value : value)),
    ),
  ]);
  expect(told).toEqual([
    [3, [[10, SEED]]],
    [2, [[12, 10]]],
    [1, [[SEED, 12]]],
  ]);
});
