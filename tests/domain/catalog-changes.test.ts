import { expect, test } from "vitest";
import { modelChanges } from "@/lib/domain/catalog-changes";
import { TWO_STAGE } from "./a-job-context";

test("a version that says the same has no changes, in whatever order its rows and members stand", () => {
  const reordered = TWO_STAGE.fan.map((row) => ({
    powerW: row.powerW,
    airflowCfm: row.airflowCfm,
    externalStaticInWc: row.externalStaticInWc,
    airflowSetting: row.airflowSetting,
  }));
  expect(modelChanges(TWO_STAGE, { ...TWO_STAGE, version: 2, fan: reordered.toReversed() })).toEqual([]);
});

test("what differs is named with both values; rows are counted as added, gone and changed", () => {
  const [first, second, ...rest] = TWO_STAGE.fan;
  if (!first || !second) throw new Error("The sample has a fan table.");
  const next = {
    ...TWO_STAGE,
    refrigerant: "R-454B",
    data: { ...TWO_STAGE.data, limits: { ...TWO_STAGE.data.limits, maxExternalStaticInWc: null } },
    fan: [{ ...first, airflowCfm: 905 }, { ...second, airflowSetting: "medium" }, ...rest],
  };
  expect(modelChanges(TWO_STAGE, next)).toEqual([
    "Refrigerant: R-410A → R-454B",
    "Maximum external static, in. w.c.: 0.9 → not given",
    "Fan table, rows: 1 added, 1 gone, 1 changed",
  ]);
});
